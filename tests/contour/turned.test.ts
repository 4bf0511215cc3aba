import { expect, test } from 'vitest';
import { turned } from '../../src/contour/turned.js';

const near = (x: number, y: number) => [expect.closeTo(x, 12), expect.closeTo(y, 12)];

test('turning is counter-clockwise: a quarter takes x to y, and y to the other side of x', () => {
  expect(turned([10, 0], Math.PI / 2)).toEqual(near(0, 10));
  expect(turned([0, 10], Math.PI / 2)).toEqual(near(-10, 0));
  expect(turned([1, 0], Math.PI / 6)).toEqual(near(Math.sqrt(3) / 2, 0.5));
});

// Multiplication of complex numbers: the product of 3 + 4i and (4 + 3i)/5 is 5i.
test('a point is turned about the origin first, and then moved', () => {
  expect(turned([3, 4], Math.atan2(3, 4), [100, 20])).toEqual(near(100, 25));
});
