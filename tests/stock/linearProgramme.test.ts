import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { solved } from '../../src/stock/linearProgramme.js';

/** The largest value at all corners where `d` limits meet and no other is overstepped: obvious, and slow. */
function atCorners(objective: number[], rows: number[][], limits: number[], bound: number): number | undefined {
  const d = objective.length;
  const all = [...rows, ...objective.flatMap((_, j) => [unit(d, j, 1), unit(d, j, -1)])];
  const edges = [...limits, ...objective.flatMap(() => [bound, bound])];
  let most: number | undefined;
  for (const choice of choices(all.length, d)) {
    const x = meeting(
      choice.map((i) => all[i]!),
      choice.map((i) => edges[i]!),
    );
    if (!x || all.some((row, i) => dot(row, x) > edges[i]! + 1e-7)) continue;
    most = Math.max(most ?? -Infinity, dot(objective, x));
  }
  return most;
}

const unit = (d: number, at: number, value: number) => Array.from({ length: d }, (_, j) => (j === at ? value : 0));
const dot = (a: readonly number[], b: readonly number[]) => a.reduce((sum, value, i) => sum + value * b[i]!, 0);

function* choices(count: number, size: number, from = 0): Generator<number[]> {
  if (size === 0) yield [];
  else for (let i = from; i < count; i++) for (const rest of choices(count, size - 1, i + 1)) yield [i, ...rest];
}

/** Gaussian elimination with the largest pivot. */
function meeting(rows: number[][], limits: number[]): number[] | undefined {
  const a = rows.map((row, i) => [...row, limits[i]!]);
  const d = rows.length;
  for (let c = 0; c < d; c++) {
    const p = a.reduce((at, row, i) => (i >= c && Math.abs(row[c]!) > Math.abs(a[at]![c]!) ? i : at), c);
    if (Math.abs(a[p]![c]!) < 1e-9) return undefined;
    [a[c], a[p]] = [a[p]!, a[c]!];
    for (let r = 0; r < d; r++) {
      if (r === c) continue;
      const f = a[r]![c]! / a[c]![c]!;
      for (let k = c; k <= d; k++) a[r]![k]! -= f * a[c]![k]!;
    }
  }
  return a.map((row, i) => row[d]! / row[i]!);
}

describe('a linear programme', () => {
  // Closed form: the corner where the two dearest limits meet, by hand.
  it('finds the corner of a small one worked by hand', () => {
    const found = solved({
      objective: [3, 2],
      rows: Float64Array.of(1, 1, 1, 0.5),
      limits: Float64Array.of(4, 3),
      bounds: [10, 10],
    })!;
    expect(found[0]).toBeCloseTo(2, 9);
    expect(found[1]).toBeCloseTo(2, 9);
  });

  it('says when no point keeps every limit', () => {
    const impossible = { objective: [1, 0], rows: Float64Array.of(1, 0, -1, 0), limits: Float64Array.of(-2, 1) };
    expect(solved({ ...impossible, bounds: [10, 10] })).toBeUndefined();
  });

  it.each([2, 3, 4])('of %i variables is as good as the best of all corners', (d) => {
    const number = fc.integer({ min: -20, max: 20 }).map((n) => n / 10);
    const row = fc.array(number, { minLength: d, maxLength: d });
    const drawn = fc.record({
      objective: row,
      rows: fc.array(row, { minLength: 1, maxLength: d === 4 ? 6 : 9 }),
      limits: fc.array(fc.integer({ min: -30, max: 60 }), { minLength: 9, maxLength: 9 }),
    });
    fc.assert(
      fc.property(drawn, ({ objective, rows, limits }) => {
        const edges = limits.slice(0, rows.length).map((limit) => limit / 10);
        const most = atCorners(objective, rows, edges, 10);
        const found = solved({
          objective,
          rows: Float64Array.from(rows.flat()),
          limits: Float64Array.from(edges),
          bounds: rows[0]!.map(() => 10),
        });
        expect(found === undefined).toBe(most === undefined);
        if (most === undefined) return;
        rows.forEach((each, i) => expect(dot(each, [...found!])).toBeLessThanOrEqual(edges[i]! + 1e-6));
        expect(dot(objective, [...found!])).toBeCloseTo(most, 6);
      }),
      { seed: 1991, numRuns: d === 4 ? 150 : 300 },
    );
  });
});
