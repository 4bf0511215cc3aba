import { describe, expect, test } from 'vitest';
import type { Nest, NestProblem, NestedSheet, StockSize, WantedBlank } from '../../../src/block/nest/nest.js';
import { compareNests, compareSums, costOf, missingValue, rulesOf, valued } from '../../../src/block/nest/nest.js';
import { fitsOn, finished, recreate, type OpenLayout, type Strategy } from '../../../src/block/nest/recreate.js';
import { eachBlank, wholeSheet } from '../../../src/block/nest/region.js';
import {
  construct,
  improve,
  movedEither,
  movedPieces,
  restsIn,
  shortfall,
  type Effort,
} from '../../../src/block/nest/search.js';
import { drawRestsTogether, nestAll } from '../../../src/block/nest/nestAll.js';
import { seeded } from '../../../src/block/nest/seeded.js';

const want = (length: number, height: number, more: Partial<WantedBlank> = {}): WantedBlank => ({
  length,
  height,
  mayTurn: false,
  count: 1,
  value: length * height,
  ...more,
});
const sheet = (length: number, width: number, cost = length * width, count = Infinity): StockSize => ({
  length,
  width,
  cost,
  count,
});
const problemOf = (wanted: readonly WantedBlank[], stock: readonly StockSize[]): NestProblem => ({
  wanted,
  stock,
  stages: 3,
  firstCuts: [1],
});
const strategy = (more: Partial<Strategy> = {}): Strategy => ({
  order: 'area',
  noise: 0,
  overlooked: 0,
  stock: 'cheapest',
  ...more,
});
const layoutOf = (problem: NestProblem, budget = Infinity): OpenLayout => ({
  sheets: [],
  used: problem.stock.map(() => 0),
  budget,
});
const kindsOn = ({ root }: Pick<NestedSheet, 'root'>) => {
  const kinds: number[] = [];
  eachBlank(root, ({ kind }) => kinds.push(kind));
  return kinds;
};

describe('blanks are put on sheets', () => {
  // One strip of a sheet holds them all, one behind the other, in the order in which they came.
  const wanted = [want(50, 40), want(90, 40), want(70, 40), want(90, 40)];
  const order = (more: Partial<Strategy>, those: readonly WantedBlank[] = wanted, draw = () => 0.5) => {
    const problem = problemOf(those, [sheet(2000, 40)]);
    const layout = layoutOf(problem);
    const rules = { stages: 3, shortest: 1 };
    const all = those.map((_, kind) => kind);
    expect(recreate(layout, all, problem, rules, strategy(more), draw)).toEqual([]);
    return kindsOn(layout.sheets[0]!);
  };

  test('the largest first, of equals the first', () => {
    expect(order({})).toEqual([1, 3, 2, 0]);
    expect(order({ order: 'length' })).toEqual([1, 3, 2, 0]);
    const worths = wanted.map((each, i) => ({ ...each, value: [900, 10, 300, 20][i]! }));
    expect(order({ order: 'value' }, worths)).toEqual([0, 2, 3, 1]);
    const tall = [want(50, 10), want(30, 40), want(45, 20)];
    expect(order({ order: 'height' }, tall)).toEqual([1, 2, 0]);
    expect(order({ order: 'long side' }, tall)).toEqual([0, 2, 1]);
    expect(order({ order: 'area' }, tall)).toEqual([1, 2, 0]);
  });

  test('chance takes up to its share of their rank', () => {
    // 90 is drawn down by all of the noise, the others by nothing.
    const scripted = (values: number[]) => () => values.shift() ?? 0;
    expect(order({ noise: 0.5 }, wanted, scripted([0, 1, 0, 0]))).toEqual([3, 2, 0, 1]);
    expect(order({ noise: 0.5 }, wanted, scripted([0, 0.2, 0, 0]))).toEqual([3, 1, 2, 0]);
  });

  test('a sheet is opened that holds the blank, can be paid, is still there, and is cheapest by area', () => {
    const stock = [sheet(1000, 500, 300), sheet(400, 400, 90), sheet(2000, 1000, 700), sheet(100, 90, 1)];
    const rules = { stages: 3, shortest: 1 };
    const opened = (
      size: WantedBlank,
      budget: number,
      used = [0, 0, 0, 0],
      of = stock,
      more: Partial<Strategy> = {},
    ) => {
      const problem = problemOf([size], of);
      const layout: OpenLayout = { sheets: [], used: [...used], budget };
      const missing = recreate(layout, [0], problem, rules, strategy(more), () => 0.5);
      const at = layout.sheets[0]?.stock;
      if (at !== undefined) {
        expect(layout.used[at]).toBe(used[at]! + 1);
        expect(layout.budget).toBe(budget - of[at]!.cost);
      }
      expect(missing).toEqual(at === undefined ? [0] : []);
      return at;
    };
    expect(opened(want(300, 300), Infinity)).toBe(2);
    expect(opened(want(300, 300), 699)).toBe(1);
    expect(opened(want(300, 300), 90)).toBe(1);
    expect(opened(want(300, 300), 89)).toBeUndefined();
    expect(opened(want(90, 100), Infinity)).toBe(2);
    expect(opened(want(90, 90), Infinity)).toBe(3);
    expect(opened(want(500, 450), 500)).toBe(0);
    expect(opened(want(90, 100, { mayTurn: true }), Infinity)).toBe(3);
    expect(opened(want(3000, 10), Infinity)).toBeUndefined();
    const few = stock.map((size) => ({ ...size, count: 1 }));
    expect(opened(want(300, 300), Infinity, [0, 0, 1, 0], few)).toBe(1);
    expect(opened(want(300, 300), Infinity, [1, 1, 1, 1], few)).toBeUndefined();
    // Any that can be paid: by the lowest draw, which here is the first.
    expect(opened(want(300, 300), Infinity, [0, 0, 0, 0], stock, { stock: 'any' })).toBe(0);
  });

  test('what fits nowhere is missing, once for each, and the rest is placed', () => {
    const wanted3 = [want(300, 100, { count: 3 }), want(80, 50)];
    const problem = problemOf(wanted3, [sheet(310, 110, 1, 1)]);
    const layout = layoutOf(problem);
    const missing = recreate(layout, [0, 0, 0, 1], problem, { stages: 3, shortest: 1 }, strategy(), () => 0.5);
    expect(missing).toEqual([0, 0, 1]);
    expect(kindsOn(layout.sheets[0]!)).toEqual([0]);
    const rules = rulesOf(problem);
    expect(rules).toEqual({ stages: 3, shortest: 50 });
    const [made] = finished(
      { ...layout, sheets: [...layout.sheets, { stock: 0, root: wholeSheet(310, 110, 1) }] },
      problem,
      rules,
    );
    expect([made!.stock, made!.value]).toEqual([0, 30000]);
  });

  test('a blank fits a sheet lengthwise, or across where it may be turned, to the last thousandth', () => {
    const fits = (length: number, height: number, mayTurn = false) =>
      fitsOn({ length, height, mayTurn }, sheet(300, 100));
    expect([
      fits(300, 100),
      fits(300.01, 50),
      fits(50, 100.01),
      fits(100, 300),
      fits(100, 300, true),
      fits(101, 300, true),
    ]).toEqual([true, false, false, false, true, false]);
  });
});

describe('layouts are compared', () => {
  const problem = problemOf([want(10, 10), want(20, 20)], [sheet(100, 100, 7), sheet(50, 50, 3)]);
  const nest = (stocks: number[], missing: number[]): Nest => ({
    sheets: stocks.map((stock) => valued(stock, wholeSheet(100, 100, 1), problem, rulesOf(problem))),
    missing,
  });

  test('first by what is missing, then by what they cost; sums that differ by rounding are the same', () => {
    expect(missingValue(nest([], [0, 1, 1]), problem)).toBe(900);
    expect(costOf(nest([0, 1, 1], []), problem)).toBe(13);
    expect(compareNests(nest([0], [0]), nest([0, 0, 0], []), problem)).toBeGreaterThan(0);
    expect(compareNests(nest([0], []), nest([1, 1], []), problem)).toBeGreaterThan(0);
    expect(compareNests(nest([1], [1]), nest([0], [1]), problem)).toBeLessThan(0);
    expect(compareSums({ missing: 5, cost: 1 }, { missing: 5 + 1e-10, cost: 1 })).toBe(0);
    expect(compareSums({ missing: 5, cost: 1 }, { missing: 5 + 1e-7, cost: 0 })).toBeLessThan(0);
    expect(compareSums({ missing: 0, cost: 1 + 1e-7 }, { missing: 0, cost: 1 })).toBeGreaterThan(0);
    expect(compareSums({ missing: 0, cost: 0 }, { missing: 0, cost: 0 })).toBe(0);
  });

  test('a shortfall is what is missing, less a little for large rests', () => {
    const [empty, whole] = [nest([], [0, 1]), nest([0], [0, 1])];
    // A whole sheet of rests counts two mean blanks where all are to be placed, 0.4 of the smallest where most are.
    expect(shortfall(problem, 'all')(empty)).toBe(500);
    expect(shortfall(problem, 'all')(whole)).toBeCloseTo(500 - 2 * 250, 9);
    expect(shortfall(problem, 'most')(whole)).toBeCloseTo(500 - 0.4 * 100, 9);
    expect(restsIn(nest([0, 0], []))).toBeCloseTo(2 * 10000 ** 1.25, 6);
  });
});

/** Twelve sheets, each with a few blanks. */
const many = problemOf(
  Array.from({ length: 60 }, (_, i) => want(60 + ((i * 37) % 50), 40 + ((i * 13) % 30))),
  [sheet(250, 120)],
);

// Late acceptance (E. K. Burke, Y. Bykov, "The late acceptance hill-climbing heuristic", EJOR 258, 2017): a neighbour
// is taken where it is no worse than what is there or than what was there 60 rounds ago. A neighbour shares all but
// three of its sheets with the layout that it was made from.
test('a search goes on from what late acceptance takes, and gives the best that it has seen', () => {
  for (const [seed, move] of [
    [3, movedPieces],
    [8, movedEither],
  ] as const) {
    // prettier-ignore
    const start = construct(many, { rounds: 0, seed: seeded(seed), stop: () => false });
    expect(start.missing).toEqual([]);
    expect(start.sheets.length).toBeGreaterThan(9);
    const [seen, scores]: [Nest[], number[]] = [[], []];
    const draw = seeded(seed + 1);
    const score = (nest: Nest) => {
      seen.push(nest);
      scores.push(Math.floor(1000 * draw()));
      return scores.at(-1)!;
    };
    const best = improve(start, many, Infinity, score, () => false, {
      rounds: 400,
      seed: seeded(seed),
      stop: () => false,
    }, move); // prettier-ignore
    expect(seen).toHaveLength(401);
    let now = 0;
    const history = new Array<number>(60).fill(scores[0]!);
    let least = 0;
    let late = 0;
    for (let i = 1; i < seen.length; i++) {
      const shared = (k: number) => seen[i]!.sheets.filter((each) => seen[k]!.sheets.includes(each)).length;
      expect(shared(now), `${i}`).toBeGreaterThanOrEqual(seen[now]!.sheets.length - 3);
      const past = (i - 1) % 60;
      if (scores[i]! <= scores[now]! || scores[i]! <= history[past]!) {
        if (scores[i]! > scores[now]!) late++;
        now = i;
      }
      if (scores[now]! < scores[least]!) least = now;
      history[past] = scores[now]!;
    }
    expect(late).toBeGreaterThan(3);
    expect(best).toBe(seen[least]);
  }
});

describe('a search', () => {
  const start = construct(many, { rounds: 0, seed: seeded(1), stop: () => false });
  const effort = (more: Partial<Effort> = {}): Effort => ({ rounds: 200, seed: seeded(5), stop: () => false, ...more });

  test('keeps every blank once, within the budget and the sheets there are', () => {
    for (const [budget, count] of [
      [Infinity, Infinity],
      [costOf(start, many), Infinity],
      [1.1 * costOf(start, many), start.sheets.length],
    ] as const) {
      const held = { ...many, stock: many.stock.map((size) => ({ ...size, count })) };
      for (const move of [movedPieces, movedEither]) improve(start, held, budget, (nest) => {
        const kinds = [...nest.sheets.flatMap(kindsOn), ...nest.missing].sort((a, b) => a - b);
        expect(kinds).toEqual(many.wanted.map((_, kind) => kind));
        expect(costOf(nest, held)).toBeLessThanOrEqual(budget + 1e-6);
        expect(nest.sheets.length).toBeLessThanOrEqual(count);
        expect(nest.sheets.every((each) => kindsOn(each).length > 0)).toBe(true);
        return 0;
      }, () => false, effort(), move); // prettier-ignore
    }
  });

  test('ends with the first that is enough, when it is stopped, and when its rounds are spent', () => {
    let [scored, asked] = [0, 0];
    const count = () => scored++;
    const third = improve(start, many, Infinity, count, () => ++asked === 3, effort(), movedPieces);
    expect([asked, scored]).toEqual([3, 3]);
    expect(third).not.toBe(start);
    [scored, asked] = [0, 0];
    const left = effort({ stop: () => ++asked > 7 });
    improve(start, many, Infinity, count, () => false, left, movedPieces);
    expect([scored, left.rounds]).toEqual([8, 193]);
    scored = 0;
    expect(improve(start, many, Infinity, count, () => false, effort({ rounds: 0 }), movedPieces)).toBe(start);
    expect(scored).toBe(1);
  });
});

describe('all blanks on the cheapest sheets', () => {
  // Cut back from a whole number of sheets that they fill without a rest: fewer cannot hold them.
  test.each([1, 2, 5])('of %d sheets cut into quarters and thirds it finds so many again', (sheets) => {
    const one = [want(150, 100), want(150, 100), want(100, 100), want(100, 100), want(100, 100)];
    const problem = problemOf(Array.from({ length: sheets }, () => one).flat(), [sheet(300, 200)]);
    const told: number[] = [];
    const nest = nestAll(problem, { rounds: 2000, seed: 1, stop: () => false }, Infinity, (better) =>
      told.push(costOf(better, problem)),
    );
    expect(nest.missing).toEqual([]);
    expect(nest.sheets).toHaveLength(sheets);
    expect(told).toEqual([...told].sort((a, b) => b - a));
    expect(new Set(told).size).toBe(told.length);
  });

  test('of a sheet that is too few the most valuable are placed', () => {
    const wanted = [want(100, 100, { value: 1 }), want(100, 100, { value: 5 }), want(100, 100, { value: 3 })];
    const problem = problemOf(wanted, [sheet(200, 100, 1, 1)]);
    const nest = nestAll(problem, { rounds: 1000, seed: 1, stop: () => false });
    expect(nest.missing).toEqual([0]);
  });

  test('the rests are drawn together in the last of the rounds, without losing a blank or paying more', () => {
    const problem = problemOf(
      Array.from({ length: 9 }, (_, i) => want(90 + 10 * (i % 3), 60)),
      [sheet(400, 300)],
    );
    const first = construct(problem, { rounds: 0, seed: seeded(2), stop: () => false });
    const nest = drawRestsTogether(first, problem, { rounds: 600, seed: 2, stop: () => false });
    expect(nest.missing).toEqual([]);
    expect(costOf(nest, problem)).toBe(costOf(first, problem));
    expect(restsIn(nest)).toBeGreaterThanOrEqual(restsIn(first));
  });
});
