import fc from 'fast-check';
import { expect, test } from 'vitest';
import { cheapestCover } from '../../../src/block/nest/cheapestCover.js';
import type { StockSize } from '../../../src/block/nest/nest.js';

const SEED = 20261127;
const size = (length: number, width: number, cost: number, count = Infinity): StockSize => ({
  length,
  width,
  cost,
  count,
});

/** Every number of sheets of every size, one after the other. */
function byAllNumbers(area: number, stock: readonly StockSize[]): number {
  let least = Infinity;
  const pick = (i: number, left: number, spent: number): void => {
    if (left <= 1e-9 * area) least = Math.min(least, spent);
    if (i === stock.length) return;
    const { length, width, cost, count } = stock[i]!;
    const most = Math.min(count, Math.max(0, Math.ceil(left / (length * width))));
    for (let n = 0; n <= most; n++) pick(i + 1, left - n * length * width, spent + n * cost);
  };
  pick(0, area, 0);
  return least;
}

const sizes = fc.array(
  fc.record({
    length: fc.integer({ min: 1, max: 9 }),
    width: fc.integer({ min: 1, max: 5 }),
    cost: fc.integer({ min: 0, max: 30 }),
    count: fc.oneof(fc.integer({ min: 0, max: 3 }), fc.constant(Infinity)),
  }),
  { maxLength: 4 },
);

test(`the least that sheets cost whose area suffices, by every number of each (seed ${SEED})`, () => {
  fc.assert(
    fc.property(sizes, fc.integer({ min: 0, max: 60 }), (stock, area) => {
      expect(cheapestCover(area, stock)).toBe(byAllNumbers(area, stock));
    }),
    { seed: SEED, numRuns: 400 },
  );
});

test('of one size it is so many whole sheets, of none nothing is enough', () => {
  expect(cheapestCover(1e6, [size(1200, 600, 20)])).toBe(40);
  expect(cheapestCover(720_000, [size(1200, 600, 20)])).toBe(20);
  expect(cheapestCover(720_001, [size(1200, 600, 20, 1)])).toBe(Infinity);
  expect(cheapestCover(1, [])).toBe(Infinity);
  expect(cheapestCover(0, [])).toBe(0);
});

// With sizes past counting parts of sheets count: the cheapest by area first, each as often as it is there (the
// fractional knapsack, G. B. Dantzig, "Discrete-variable extremum problems", Operations Research 5, 1957).
test('of very many sizes it is a bound: parts of sheets, the cheapest by area first', () => {
  const stock = Array.from({ length: 60 }, (_, i) => size(97 + ((i * 37) % 61), 100, 1000 + ((i * 53) % 71), 1));
  const area = 0.55 * stock.reduce((sum, { length, width }) => sum + length * width, 0);
  let [left, cost] = [area, 0];
  for (const { length, width, cost: each } of [...stock].sort((a, b) => a.cost / a.length - b.cost / b.length)) {
    const share = Math.min(1, left / (length * width));
    left -= share * length * width;
    cost += share * each;
  }
  const bound = cheapestCover(area, stock);
  expect(bound).toBeLessThanOrEqual(Math.ceil(cost) + 1000);
  expect(bound).toBeCloseTo(cost, 6);
  expect(cheapestCover(2 * area, stock)).toBe(Infinity);
});
