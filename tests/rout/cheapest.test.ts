import fc from 'fast-check';
import { expect, test } from 'vitest';
import { cheapest } from '../../src/rout/cheapest.js';

const SEED = 20260711;

/** Every choice of `count` columns, one after the other. */
function bruteForce(costs: readonly Float64Array[], count: number): number {
  const rows = costs[0]!.length;
  let best = Infinity;
  const pick = (from: number, chosen: number[]): void => {
    if (chosen.length === Math.min(count, costs.length)) {
      let sum = 0;
      for (let i = 0; i < rows; i++) sum += Math.min(...chosen.map((c) => costs[c]![i]!));
      best = Math.min(best, sum);
      return;
    }
    for (let c = from; c < costs.length; c++) pick(c + 1, [...chosen, c]);
  };
  pick(0, []);
  return best;
}

// Brute force, tables like those of guides: a column serves only rows it fits, one column serves all.
test(`the choice is the cheapest there is, and its bound never lies above that (seed ${SEED})`, () => {
  fc.assert(
    fc.property(
      fc.array(fc.tuple(fc.integer({ min: 10, max: 60 }), fc.integer({ min: 10, max: 60 })), {
        minLength: 2,
        maxLength: 8,
      }),
      fc.integer({ min: 1, max: 4 }),
      (chambers, count) => {
        const lengths = [...new Set(chambers.map(([l]) => l))];
        const heights = [...new Set(chambers.map(([, h]) => h))];
        const sizes = lengths.flatMap((l) => heights.map((h) => [l, h] as const));
        const costs = sizes.map(([l, h]) =>
          Float64Array.from(chambers, ([L, H]) => (l <= L && h <= H ? L * H - l * h : Infinity)),
        );
        if (sizes.length > 30) return;
        const { cost, bound, columns } = cheapest(costs, count);
        const best = bruteForce(costs, count);
        expect(columns.length).toBeLessThanOrEqual(count);
        expect(bound).toBeLessThanOrEqual(best + 1e-6);
        expect(cost).toBeGreaterThanOrEqual(best - 1e-6);
        expect(cost).toBe(best);
      },
    ),
    { seed: SEED, numRuns: 150 },
  );
});

test('one column for every row costs nothing when each row has its own', () => {
  const costs = [0, 1, 2].map((c) => Float64Array.from([0, 1, 2], (r) => (r === c ? 0 : 5)));
  expect(cheapest(costs, 3)).toMatchObject({ cost: 0, bound: 0 });
});
