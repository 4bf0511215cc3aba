import { expect, test } from 'vitest';
import { clearOfArcs, partWithin } from '../../src/contour/partWithin.js';

/** A square of 100 mm with corners of 10 mm, counter-clockwise from its lower left arc: worked out by hand. */
const BULGE = Math.tan(Math.PI / 8);
const SQUARE = [
  { x: 0, y: 10, bulge: BULGE },
  { x: 10, y: 0 },
  { x: 90, y: 0, bulge: BULGE },
  { x: 100, y: 10 },
  { x: 100, y: 90, bulge: BULGE },
  { x: 90, y: 100 },
  { x: 10, y: 100, bulge: BULGE },
  { x: 0, y: 90 },
];

test('the left of a rounded square begins and ends where it is cut, its arcs kept', () => {
  expect(partWithin(SQUARE, -5, 40)).toEqual([
    { x: 40, y: 100 },
    { x: 10, y: 100, bulge: BULGE },
    { x: 0, y: 90 },
    { x: 0, y: 10, bulge: BULGE },
    { x: 10, y: 0 },
    { x: 40, y: 0 },
  ]);
});

test('the right of it runs the other way around, and all of it is the square itself', () => {
  expect(partWithin(SQUARE, 60, 105).map(({ x, y }) => [x, y])).toEqual([
    [60, 0],
    [90, 0],
    [100, 10],
    [100, 90],
    [90, 100],
    [60, 100],
  ]);
  expect(partWithin(SQUARE, -5, 105)).toEqual(SQUARE);
});

test('a cut that would go through an arc moves beyond it, the way it is told', () => {
  expect(clearOfArcs(SQUARE, 50, 1)).toBe(50);
  expect(clearOfArcs(SQUARE, 5, 1)).toBe(11);
  expect(clearOfArcs(SQUARE, 95, -1)).toBe(89);
});
