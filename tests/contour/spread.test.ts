import { expect, test } from 'vitest';
import { polygonAround } from '../../src/contour/around.js';
import type { Point } from '../../src/contour/point.js';
import { rectangleAround } from '../../src/contour/rectangle.js';
import { spreadAlong } from '../../src/contour/spread.js';

// Second moments of area about the centre (any table of sections): rectangle b h³/12 over b h, triangle b h³/36 over
// b h/2, circle πr⁴/4 over πr².
test('a rectangle spreads by a twelfth of the square of its length, wherever it stands', () => {
  expect(spreadAlong(rectangleAround([0, 0], 90, 40))).toBeCloseTo(90 ** 2 / 12, 9);
  expect(spreadAlong(rectangleAround([2000, 350], 90, 40))).toBeCloseTo(90 ** 2 / 12, 5);
});

test('a triangle spreads by an eighteenth of the square of its height, whichever way it runs', () => {
  const triangle: Point[] = [
    [0, 0],
    [60, 10],
    [0, 50],
  ];
  expect(spreadAlong(triangle)).toBeCloseTo(60 ** 2 / 18, 9);
  expect(spreadAlong([...triangle].reverse())).toBeCloseTo(60 ** 2 / 18, 9);
});

test('a circle spreads by a quarter of the square of its radius', () => {
  expect(spreadAlong(polygonAround([7, 3], 20, 5000))).toBeCloseTo(20 ** 2 / 4, 3);
});
