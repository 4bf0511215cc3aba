import { expect, test } from 'vitest';
import { nearestOn, squareTo } from '../../src/contour/nearest.js';
import type { Point } from '../../src/contour/point.js';

test('the nearest place of a line is its foot, or the end beyond which the foot would lie', () => {
  const [a, b]: [Point, Point] = [
    [10, 0],
    [50, 30],
  ];
  // Against ten thousand places along it.
  for (const p of [
    [0, 0],
    [30, 40],
    [70, 10],
    [30, 15],
  ] as const) {
    let least = Infinity;
    for (let i = 0; i <= 10_000; i++) {
      const t = i / 10_000;
      least = Math.min(least, Math.hypot(10 + 40 * t - p[0], 30 * t - p[1]));
    }
    const [x, y] = nearestOn(a, b, p);
    expect(Math.hypot(x - p[0], y - p[1])).toBeLessThanOrEqual(least + 1e-9);
    expect(Math.hypot(x - p[0], y - p[1])).toBeGreaterThan(least - 0.01);
    expect(squareTo(a, b, p)).toBeCloseTo(Math.hypot(x - p[0], y - p[1]) ** 2, 9);
  }
  expect(nearestOn(a, a, [0, 7])).toEqual(a);
  expect(squareTo(a, a, [13, 4])).toBe(25);
});
