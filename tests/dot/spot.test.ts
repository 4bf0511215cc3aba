import { Clipper, PointInPolygonResult } from 'clipper2-ts';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Point } from '../../src/contour/point.js';
import { gapTo } from '../../src/dot/spot.js';
import { evenly } from '../evenly.js';

const SEED = 20261127;
const SCALE = 1000;
/** Places looked at along each line. */
const FINE = 200;

const place = fc.tuple(fc.integer({ min: 0, max: 200 }), fc.integer({ min: 0, max: 100 }));
const profiles = fc.array(evenly(0.4, 1), { minLength: 3, maxLength: 9 }).map((radii) =>
  radii.map((radius, i): Point => {
    const angle = (2 * Math.PI * i) / radii.length;
    return [100 + 60 * radius * Math.cos(angle), 50 + 40 * radius * Math.sin(angle)];
  }),
);
const along = (a: Point, b: Point) =>
  Array.from({ length: FINE + 1 }, (_, i): Point => [
    a[0] + ((b[0] - a[0]) * i) / FINE,
    a[1] + ((b[1] - a[1]) * i) / FINE,
  ]);

// Brute force over places along both; inside and outside by clipper2-ts.
test(`a profile is as far from a streak of glue as the nearest of their places (seed ${SEED})`, () => {
  let [crossed, inside] = [0, 0];
  fc.assert(
    fc.property(profiles, place, place, fc.boolean(), (profile, from, end, isDot) => {
      const to = isDot ? from : end;
      const found = gapTo(profile, { from, to });
      let least = Infinity;
      const streak = along(from, to);
      profile.forEach((a, i) => {
        for (const [s, z] of along(a, profile[(i + 1) % profile.length]!))
          for (const at of isDot ? [from] : streak) least = Math.min(least, Math.hypot(s - at[0], z - at[1]));
      });
      expect(found.gap).toBeLessThanOrEqual(least + 1e-9);
      // The longest line is 224 mm: two places next to each other on either line are nearer than this.
      expect(found.gap).toBeGreaterThanOrEqual(least - 2);
      if (found.gap === 0) crossed++;
      const path = profile.map(([x, y]) => ({ x: Math.round(x * SCALE), y: Math.round(y * SCALE) }));
      const where = Clipper.pointInPolygon({ x: from[0] * SCALE, y: from[1] * SCALE }, path);
      if (where === PointInPolygonResult.IsOn || least < 0.01) return;
      expect(found.inside).toBe(where === PointInPolygonResult.IsInside);
      if (found.inside) inside++;
    }),
    { seed: SEED, numRuns: 200 },
  );
  expect(crossed).toBeGreaterThan(5);
  expect(inside).toBeGreaterThan(5);
});

// By hand, on a square of 100 mm.
test('the gap is square to a side, straight to a corner, and nothing where glue crosses', () => {
  const square: Point[] = [[0, 0], [100, 0], [100, 100], [0, 100]]; // prettier-ignore
  const gap = (from: Point, to: Point) => gapTo(square, { from, to });
  expect(gap([50, 130], [50, 130])).toEqual({ gap: 30, inside: false });
  expect(gap([103, 104], [103, 104])).toEqual({ gap: 5, inside: false });
  expect(gap([50, 60], [50, 60])).toEqual({ gap: 40, inside: true });
  expect(gap([10, 50], [70, 50])).toEqual({ gap: 10, inside: true });
  expect(gap([70, 50], [90, 50])).toEqual({ gap: 10, inside: true });
  expect(gap([-50, 50], [150, 50])).toEqual({ gap: 0, inside: false });
  expect(gap([50, 50], [150, 50])).toEqual({ gap: 0, inside: true });
  // A streak past a corner, nearest in its middle.
  expect(gap([90, 120], [120, 90]).gap).toBeCloseTo(10 / Math.SQRT2, 9);
  // One beside a side, neither end of which is nearest to a corner.
  expect(gap([30, 105], [70, 109])).toEqual({ gap: 5, inside: false });
  expect(gap([200, 0], [140, 10]).gap).toBe(40);
});
