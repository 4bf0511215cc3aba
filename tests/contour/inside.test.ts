import fc from 'fast-check';
import { expect, test } from 'vitest';
import { isInside } from '../../src/contour/inside.js';
import type { Point } from '../../src/contour/point.js';
import { stars } from './polygons.js';
import { evenly } from '../evenly.js';

/** How often a polygon goes around a point: the angles its edges are seen under, added up. */
function windingNumber(polygon: readonly Point[], x: number, y: number): number {
  const seen = polygon.map(([x0, y0], i) => {
    const [x1, y1] = polygon[(i + 1) % polygon.length]!;
    const [ax, ay, bx, by] = [x0 - x, y0 - y, x1 - x, y1 - y];
    return Math.atan2(ax * by - ay * bx, ax * bx + ay * by);
  });
  return seen.reduce((a, b) => a + b, 0) / (2 * Math.PI);
}

const place = evenly(-60, 60);

// The winding number (Hormann and Agathos, "The point in polygon problem for arbitrary polygons", Computational
// Geometry 20 (2001)); the angles are added up, which no ray takes part in.
test('a point lies in a polygon just where the polygon winds around it once, whichever way it runs', () => {
  let within = 0;
  fc.assert(
    fc.property(stars, place, place, (polygon, x, y) => {
      const winding = windingNumber(polygon, x, y);
      // On an edge, within rounding, the sum is neither 0 nor 1.
      fc.pre(Math.abs(winding - Math.round(winding)) < 1e-6);
      if (winding > 0.5) within++;
      expect(isInside(polygon, x, y)).toBe(Math.round(winding) !== 0);
      expect(isInside([...polygon].reverse(), x, y)).toBe(Math.round(winding) !== 0);
    }),
    { seed: 18, numRuns: 1000 },
  );
  expect(within).toBeGreaterThan(50);
});

test('a corner level with the point is counted once', () => {
  const diamond: Point[] = [
    [10, 0],
    [0, 10],
    [-10, 0],
    [0, -10],
  ];
  expect(isInside(diamond, 0, 0)).toBe(true);
  expect(isInside(diamond, -11, 0)).toBe(false);
  expect(isInside(diamond, 11, 0)).toBe(false);
  expect(isInside(diamond, -1, 10)).toBe(false);
});
