import { expect, test } from 'vitest';
import type { Point } from '../../src/contour/point.js';
import { spanAt } from '../../src/contour/span.js';

test('the span of a triangle at a place is what its two sides leave there, and nothing beside it', () => {
  const triangle: Point[] = [
    [0, 0],
    [40, 0],
    [10, 30],
  ];
  expect(spanAt(triangle, 5)).toEqual([0, 15]);
  expect(spanAt(triangle, 25)).toEqual([0, 15]);
  expect(spanAt(triangle, 0)).toEqual([0, 0]);
  expect(spanAt(triangle, 40.001)).toBeUndefined();
  // At an upright side: the whole of it.
  const upright: Point[] = [
    [0, 2],
    [9, 2],
    [9, 7],
    [0, 7],
  ];
  expect(spanAt(upright, 0)).toEqual([2, 7]);
  expect(spanAt(upright, 9)).toEqual([2, 7]);
});
