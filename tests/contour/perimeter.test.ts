import { expect, test } from 'vitest';
import { perimeter } from '../../src/contour/perimeter.js';

/** A slot: two straights of 60 mm and two half circles of 10 mm. */
const slot = [
  { x: 0, y: 0 },
  { x: 60, y: 0, bulge: 1 },
  { x: 60, y: 20 },
  { x: 0, y: 20, bulge: 1 },
];

test('a slot is as long around as its straights and its circle', () => {
  expect(perimeter(slot)).toBeCloseTo(120 + 20 * Math.PI, 9);
});

test('an arc that bends inward counts with its length too', () => {
  const bitten = [
    { x: 0, y: 0 },
    { x: 10, y: 0, bulge: -1 },
    { x: 20, y: 0 },
    { x: 20, y: 30 },
    { x: 0, y: 30 },
  ];
  expect(perimeter(bitten)).toBeCloseTo(10 + 5 * Math.PI + 30 + 20 + 30, 9);
});
