import { expect, test } from 'vitest';
import { rectangleAround } from '../../src/contour/rectangle.js';

test('a rectangle of 90 × 40 mm around a place reaches 45 mm along and 20 mm across, counter-clockwise', () => {
  expect(rectangleAround([100, 10], 90, 40)).toEqual([
    [55, -10],
    [145, -10],
    [145, 30],
    [55, 30],
  ]);
});
