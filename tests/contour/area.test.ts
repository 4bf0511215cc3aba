import { expect, test } from 'vitest';
import { areaOf, momentsOf } from '../../src/contour/area.js';

// Half a disc: centre of area 4r / 3π from its diameter (any statics text).
test('the centre of area of a half disc lies where the text has it', () => {
  const { area, x, y } = momentsOf([
    { x: -10, y: 0 },
    { x: 10, y: 0, bulge: 1 },
  ]);
  expect(area).toBeCloseTo((Math.PI * 100) / 2, 9);
  expect(x).toBeCloseTo(0, 9);
  expect(y).toBeCloseTo((4 * 10) / (3 * Math.PI), 9);
});

// Trapezium of sides a (below) and b, height h: area (a + b) h / 2, centre h (a + 2b) / 3(a + b) over the side a (any
// statics text).
test('the centre of area of a trapezium lies where the text has it, wherever it stands', () => {
  const [a, b, h] = [90, 60, 40];
  for (const [x0, y0] of [
    [0, 0],
    [-4000, 250],
  ] as const) {
    const { area, y } = momentsOf([
      { x: x0, y: y0 },
      { x: x0 + a, y: y0 },
      { x: x0 + a - 10, y: y0 + h },
      { x: x0 + a - 10 - b, y: y0 + h },
    ]);
    expect(area).toBeCloseTo(((a + b) * h) / 2, 6);
    expect(y - y0).toBeCloseTo((h * (a + 2 * b)) / (3 * (a + b)), 6);
  }
});

// Annulus by difference: a disc of 20 mm with a bite of half a disc of 5 mm: π(20² − 5²/2).
test('an arc that bends inward takes away what it encloses', () => {
  const disc = [
    { x: 20, y: 0, bulge: 1 },
    { x: -20, y: 0, bulge: Math.tan(Math.PI / 4) },
  ];
  expect(areaOf(disc)).toBeCloseTo(Math.PI * 400, 6);
  const bitten = [
    { x: 0, y: 0 },
    { x: 10, y: 0, bulge: -1 },
    { x: 20, y: 0 },
    { x: 20, y: 30 },
    { x: 0, y: 30 },
  ];
  expect(areaOf(bitten)).toBeCloseTo(20 * 30 - (Math.PI * 25) / 2, 6);
});
