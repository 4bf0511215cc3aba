import fc from 'fast-check';
import { expect, test } from 'vitest';
import { doCross } from '../../src/contour/crossing.js';
import type { Point } from '../../src/contour/point.js';

/** Whole millimetres: products and shares are compared without rounding, and lines that just touch do come up. */
const point = fc.tuple(fc.integer({ min: -9, max: 9 }), fc.integer({ min: -9, max: 9 }));

// Cramer's rule for the two shares at which the lines meet: an intersection is where both lie between 0 and 1.
test('two lines cross just where each is met between its ends', () => {
  let crossing = 0;
  fc.assert(
    fc.property(point, point, point, point, (a, b, c, d) => {
      const [ux, uy, vx, vy] = [b[0] - a[0], b[1] - a[1], d[0] - c[0], d[1] - c[1]];
      const [wx, wy] = [c[0] - a[0], c[1] - a[1]];
      const determinant = ux * vy - uy * vx;
      fc.pre(determinant !== 0);
      const [s, t] = [(wx * vy - wy * vx) / determinant, (wx * uy - wy * ux) / determinant];
      const cross = s > 0 && s < 1 && t > 0 && t < 1;
      if (cross) crossing++;
      expect(doCross(a, b, c, d)).toBe(cross);
    }),
    { seed: 18, numRuns: 1000 },
  );
  expect(crossing).toBeGreaterThan(50);
});

test('lines that touch at an end, or lie along each other, do not cross', () => {
  const [a, b, over]: [Point, Point, Point] = [
    [0, 0],
    [10, 0],
    [5, 8],
  ];
  expect(doCross(a, b, [5, 0], over)).toBe(false);
  expect(doCross(a, b, b, over)).toBe(false);
  expect(doCross(a, b, [5, 0], [15, 0])).toBe(false);
  expect(doCross(a, b, [5, -1], over)).toBe(true);
});
