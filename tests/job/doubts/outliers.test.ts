import { expect, it } from 'vitest';
import { median, modifiedZ, outliersAlong } from '../../../src/job/doubts/outliers.js';

const bearing = { inside: 0.06, next: 0.08, end: 0.2 };

it('the median is the middle value, or halfway between the middle two', () => {
  expect([median([3, 1, 2]), median([4, 1, 3, 2])]).toEqual([2, 2.5]);
});

// By hand from the formula of Iglewicz and Hoaglin (1993), 0.6745 (x - median) / MAD: of 2.1 … 2.9 the median is 2.5,
// the deviations from it are 0.4 0.3 0.2 0.1 0 0.1 0.2 0.3 0.4, MAD 0.2; so 9.9 scores 0.6745 · 7.4 / 0.2 = 24.9565.
it('a score is as worked out by hand', () => {
  const others = [2.1, 2.2, 2.3, 2.4, 2.5, 2.6, 2.7, 2.8, 2.9];
  expect(modifiedZ(9.9, others, 0)).toBeCloseTo(24.9565, 4);
  expect(modifiedZ(2.5, others, 0)).toBe(0);
});

it('values that a rule cannot tell apart have no outlier among them', () => {
  expect(modifiedZ(1.2, [1, 1, 1, 1], 0.5)).toBeLessThan(3.5);
});

const at = [0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10];
const parabola = at.map((x) => 100 - (x - 5) ** 2);

it('a parabola has none, wherever its places are', () => {
  expect(outliersAlong(at, parabola, 0.5, bearing)).toEqual([]);
  const uneven = [0, 0.3, 1, 3, 3.2, 6, 7, 9.5, 10];
  expect(
    outliersAlong(
      uneven,
      uneven.map((x) => 100 - (x - 5) ** 2),
      0.5,
      bearing,
    ),
  ).toEqual([]);
});

it.each(at)('one value off is found, at place %d as anywhere, with what the parabola has there', (index) => {
  for (const wrong of [30, 1000, -50]) {
    const values = parabola.map((value, i) => (i === index ? wrong : value));
    expect(outliersAlong(at, values, 0.5, bearing)).toEqual([
      { index, expected: expect.closeTo(parabola[index]!, 6) as number },
    ]);
  }
});

it('two values off are found, the further one first', () => {
  const values = parabola.map((value, i) => (i === 3 ? 10 : i === 7 ? 400 : value));
  expect(outliersAlong(at, values, 0.5, bearing).map(({ index }) => index)).toEqual([7, 3]);
});

it('of five values none is told: there is no telling which', () => {
  expect(outliersAlong([0, 1, 2, 3, 4], [1, 1, 50, 1, 1], 0.5, bearing)).toEqual([]);
});
