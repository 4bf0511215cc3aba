import { expect, test } from 'vitest';
import { AlongBoard, momentAbout, pointMoments, sumOf } from '../../src/weigh/moments.js';

// I_c 100 cm⁴, A 20 cm², d 6 cm: 820 cm⁴ (openknowledgegraph.com, moment of inertia about the centroid, questions).
test('a moment is shifted by the parallel axis theorem', () => {
  const about = { amount: 20, x: 0, xx: 100, yy: 0 };
  expect(momentAbout(about, 6)).toBe(820);
});

test('two weights swing as their distances squared', () => {
  expect(momentAbout(sumOf([pointMoments(2, 0), pointMoments(3, 1000, 200)]), 500)).toBe(
    2 * 500 ** 2 + 3 * (500 ** 2 + 200 ** 2),
  );
});

// A wedge: density x from 0 to L has the amount L²/2, its centre at 2L/3 and ∫ x³ = L⁴/4.
test('what rises evenly along the board is gathered exactly, in however many parts', () => {
  for (const parts of [1, 2, 7]) {
    const along = new AlongBoard();
    for (let i = 0; i < parts; i++)
      along.add((6 * i) / parts, (6 * (i + 1)) / parts, (6 * i) / parts, (6 * (i + 1)) / parts);
    const { amount, x, xx } = along.moments(1);
    expect(amount).toBeCloseTo(18, 12);
    expect(x / amount).toBeCloseTo(4, 12);
    expect(xx).toBeCloseTo(324, 11);
  }
});

// Wigley's body cut across: A(x) = (2/3) B T [1 − (2x/L)²]; the trapezoid rule over 10 stretches gives 2200 m³ of the
// true 2222.2 (by hand).
test('sections between which the board bends are gathered by the trapezoid rule', () => {
  const along = new AlongBoard();
  const area = (x: number) => (2 / 3) * 10 * 5 * (1 - (x / 50) ** 2);
  for (let x = -50; x < 50; x += 10) along.add(x, x + 10, area(x), area(x + 10));
  expect(along.moments(1).amount).toBeCloseTo(2200, 9);
});
