import { areaPathsD, FillRule, intersectD } from 'clipper2-ts';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Point } from '../../src/contour/point.js';
import { straight } from '../../src/contour/straight.js';
import { areaInStrip } from '../../src/contour/strip.js';
import { stars } from './polygons.js';
import { evenly } from '../evenly.js';

// clipper2-ts (port of Clipper2, Angus Johnson): the polygon cut with a rectangle taller than it.
test('what of a polygon lies in a strip has the area that an independent library gives it', () => {
  const place = evenly(-60, 60);
  fc.assert(
    fc.property(stars, place, place, (polygon, a, b) => {
      const [from, to] = [Math.min(a, b), Math.max(a, b)];
      const tall: Point[] = [
        [from, -100],
        [to, -100],
        [to, 100],
        [from, 100],
      ];
      const cut = intersectD([straight(polygon)], [straight(tall)], FillRule.NonZero, 6);
      const area = areaPathsD(cut);
      expect(Math.abs(areaInStrip(polygon, from, to) - area)).toBeLessThan(0.01);
      expect(Math.abs(areaInStrip([...polygon].reverse(), from, to) - area)).toBeLessThan(0.01);
    }),
    { seed: 18, numRuns: 300 },
  );
});

test('a triangle has a quarter of its area in the half toward its point', () => {
  const triangle: Point[] = [
    [0, 0],
    [60, -10],
    [60, 30],
  ];
  expect(areaInStrip(triangle, 0, 30)).toBeCloseTo((60 * 40) / 2 / 4, 9);
  expect(areaInStrip(triangle, -10, 60)).toBeCloseTo((60 * 40) / 2, 9);
  expect(areaInStrip(triangle, 60, 90)).toBe(0);
});
