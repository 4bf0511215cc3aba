import { expect, test } from 'vitest';
import { perimeter } from '../../src/contour/perimeter.js';
import { straight } from '../../src/contour/straight.js';

test('a triangle of sides 3, 4 and 5 is 12 around: its polygon has no arcs', () => {
  const contour = straight([
    [1, 1],
    [5, 1],
    [1, 4],
  ]);
  expect(contour).toEqual([
    { x: 1, y: 1 },
    { x: 5, y: 1 },
    { x: 1, y: 4 },
  ]);
  expect(perimeter(contour)).toBe(12);
});
