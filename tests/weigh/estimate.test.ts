import fc from 'fast-check';
import { inverse, Matrix, solve } from 'ml-matrix';
import { expect, test } from 'vitest';
import { priorOf, expectedOf, updated, spreadOf } from '../../src/weigh/estimate.js';
import { evenly } from '../evenly.js';

const unknown = fc.record({
  value: evenly(1, 500),
  spread: evenly(0.1, 50),
});
const part = evenly(-3, 3);

const problem = fc.tuple(fc.integer({ min: 1, max: 8 }), fc.integer({ min: 1, max: 5 })).chain(([n, m]) =>
  fc.record({
    unknowns: fc.array(unknown, { minLength: n, maxLength: n }),
    weighings: fc.array(
      fc.record({
        parts: fc.array(part, { minLength: n, maxLength: n }),
        weight: evenly(0, 100),
        spread: evenly(0.05, 2),
      }),
      { minLength: m, maxLength: m },
    ),
  }),
);

test('what is learned is the least-squares solution of a numeric library (ml-matrix, by singular values)', () => {
  fc.assert(
    fc.property(problem, ({ unknowns, weighings }) => {
      let estimate = priorOf(unknowns);
      for (const { parts, weight, spread } of weighings) estimate = updated(estimate, parts, weight, spread);

      // One equation for each unknown as it was thought, one for each weighing, all divided by their spreads.
      const rows = [
        ...unknowns.map(({ spread }, i) => unknowns.map((_, j) => (i === j ? 1 / spread : 0))),
        ...weighings.map(({ parts, spread }) => parts.map((p) => p / spread)),
      ];
      const right = [
        ...unknowns.map(({ value, spread }) => value / spread),
        ...weighings.map(({ weight, spread }) => weight / spread),
      ];
      const a = new Matrix(rows);
      const solved = solve(a, Matrix.columnVector(right), true).to1DArray();
      const covariance = inverse(a.transpose().mmul(a), true);
      solved.forEach((value, i) => {
        const scale = unknowns[i]!.spread;
        expect(Math.abs(estimate.values[i]! - value)).toBeLessThan(1e-5 * scale + 1e-6);
        expect(Math.abs(spreadOf(estimate, i) - Math.sqrt(covariance.get(i, i)))).toBeLessThan(1e-4 * scale);
      });
    }),
    { seed: 7, numRuns: 300 },
  );
});

test('weighings may come in any order', () => {
  fc.assert(
    fc.property(problem, ({ unknowns, weighings }) => {
      const through = (list: typeof weighings) =>
        list.reduce((estimate, w) => updated(estimate, w.parts, w.weight, w.spread), priorOf(unknowns));
      const forth = through(weighings);
      const back = through([...weighings].reverse());
      forth.values.forEach((value, i) =>
        expect(Math.abs(value - back.values[i]!)).toBeLessThan(1e-6 * unknowns[i]!.spread + 1e-7),
      );
    }),
    { seed: 11, numRuns: 200 },
  );
});

test('a perfect scale leaves nothing open about what it weighed', () => {
  const estimate = updated(
    priorOf([
      { value: 10, spread: 2 },
      { value: 5, spread: 1 },
    ]),
    [1, 1],
    18,
    1e-9,
  );
  expect(expectedOf(estimate, [1, 1]).value).toBeCloseTo(18, 9);
  expect(expectedOf(estimate, [1, 1]).spread).toBeLessThan(1e-6);
  // 3 more than thought: shared out by the squares of the spreads, 4 to 1.
  expect(estimate.values[0]).toBeCloseTo(12.4, 9);
  expect(estimate.values[1]).toBeCloseTo(5.6, 9);
});
