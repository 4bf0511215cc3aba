import { areaPathsD, FillRule, intersectD } from 'clipper2-ts';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { areaOf } from '../../src/contour/area.js';
import { inHalfPlane } from '../../src/contour/halfPlane.js';
import type { Point } from '../../src/contour/point.js';
import { straight } from '../../src/contour/straight.js';
import { turned } from '../../src/contour/turned.js';
import { stars } from './polygons.js';
import { evenly } from '../evenly.js';

// clipper2-ts (port of Clipper2, Angus Johnson): the polygon cut with a rectangle that ends at the line and reaches
// further than the polygon on its other sides.
test('what of a polygon lies on one side of a line has the area that an independent library gives it', () => {
  const angle = evenly(0, 2 * Math.PI);
  const most = evenly(-60, 60);
  fc.assert(
    fc.property(stars, angle, most, (polygon, angle, most) => {
      const normal: Point = [Math.cos(angle), Math.sin(angle)];
      const below = [
        [-200, -200],
        [most, -200],
        [most, 200],
        [-200, 200],
      ].map(([x, y]) => turned([x!, y!], angle));
      const cut = areaPathsD(intersectD([straight(polygon)], [straight(below)], FillRule.NonZero, 6));
      const kept = inHalfPlane(polygon, normal, most);
      expect(Math.abs(areaOf(straight(kept)) - cut)).toBeLessThan(0.01);
      for (const [x, y] of kept) expect(x * normal[0] + y * normal[1]).toBeLessThan(most + 1e-9);
    }),
    { seed: 18, numRuns: 300 },
  );
});

test('a square cut through two of its corners is a triangle: no corner on the line comes twice', () => {
  const square: Point[] = [
    [0, 0],
    [10, 0],
    [10, 10],
    [0, 10],
  ];
  expect(inHalfPlane(square, [1, 1], 10)).toEqual([
    [0, 0],
    [10, 0],
    [0, 10],
  ]);
  expect(inHalfPlane(square, [1, 0], 20)).toEqual(square);
  expect(inHalfPlane(square, [1, 0], -1)).toEqual([]);
});
