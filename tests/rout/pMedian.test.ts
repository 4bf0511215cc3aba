import fc from 'fast-check';
import { expect, test } from 'vitest';
import { pMedian } from '../../src/rout/pMedian.js';
import { costOf, costTableOf } from '../../src/rout/costTable.js';
import { exchanged, filledUp } from '../../src/rout/exchange.js';

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

/** Tables like those of guides: a column serves only rows it fits, one column serves all. */
const tables = fc
  .array(fc.tuple(fc.integer({ min: 10, max: 60 }), fc.integer({ min: 10, max: 60 })), { minLength: 2, maxLength: 8 })
  .map((chambers) => {
    const lengths = [...new Set(chambers.map(([l]) => l))];
    const heights = [...new Set(chambers.map(([, h]) => h))];
    return lengths.flatMap((l) =>
      heights.map((h) => Float64Array.from(chambers, ([L, H]) => (l <= L && h <= H ? L * H - l * h : Infinity))),
    );
  });
const counts = fc.integer({ min: 1, max: 4 });

test(`the choice is the cheapest there is, by brute force, and its bound never lies above that (seed ${SEED})`, () => {
  fc.assert(
    fc.property(
      tables.filter(({ length }) => length <= 30),
      counts,
      (costs, count) => {
        const { cost, bound, columns } = pMedian(costTableOf(costs), count);
        const best = bruteForce(costs, count);
        expect(columns.length).toBeLessThanOrEqual(count);
        expect(bound).toBeLessThanOrEqual(best + 1e-6);
        expect(cost).toBe(best);
      },
    ),
    { seed: SEED, numRuns: 150 },
  );
});

test(`it is so too when it goes on from the choice of one column less (seed ${SEED})`, () => {
  fc.assert(
    fc.property(
      tables.filter(({ length }) => length <= 30),
      (costs) => {
        const table = costTableOf(costs);
        let columns: readonly number[] = [];
        for (const count of [1, 2, 3, 4]) {
          const choice = pMedian(table, count, columns);
          expect(choice.cost).toBe(bruteForce(costs, count));
          ({ columns } = choice);
        }
      },
    ),
    { seed: SEED, numRuns: 100 },
  );
});

// Every exchange of one for one, each counted anew.
test(`when no exchange is found worth making, none is, and none was made for nothing (seed ${SEED})`, () => {
  fc.assert(
    fc.property(tables, counts, (costs, count) => {
      const table = costTableOf(costs);
      const from = filledUp(table, [], count);
      const columns = exchanged(table, from, 1e-9);
      const cost = costOf(table, columns);
      expect(cost).toBeLessThanOrEqual(costOf(table, from));
      columns.forEach((_, k) =>
        costs.forEach((__, c) => expect(costOf(table, columns.with(k, c))).toBeGreaterThanOrEqual(cost)),
      );
    }),
    { seed: SEED, numRuns: 150 },
  );
});

test('one column for every row costs nothing when each row has its own', () => {
  const costs = [0, 1, 2].map((c) => Float64Array.from([0, 1, 2], (r) => (r === c ? 0 : 5)));
  expect(pMedian(costTableOf(costs), 3)).toMatchObject({ cost: 0, bound: 0 });
});
