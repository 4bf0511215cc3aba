import type { Nest, NestProblem, NestedSheet } from './nest.js';
import { allWanted, compareNests, costOf, missingValue, rulesOf } from './nest.js';
import { inStrips, movedStrips } from './byStrips.js';
import { finished, recreate } from './recreate.js';
import type { OpenLayout, Strategy } from './recreate.js';
import { moreThanSplit, type PlaceRules } from './place.js';
import { copyRegion, kindsIn, tighten } from './region.js';
import { ruin } from './ruin.js';

/** How long a search goes on. `rounds` alone decides what is found; everything else can only stop it early. */
export interface Effort {
  rounds: number;
  readonly seed: () => number;
  /** Asked before each round. */
  readonly stop: () => boolean;
}

/** Makes another layout of one. @param budget - what its sheets may cost */
export type Move = typeof movedPieces;

/** A search remembers this many earlier scores and accepts what is no worse than the one that long ago. */
const MEMORY = 60;
/** About so many blanks are taken out in one round at most … */
const LARGEST_HANDFUL = 16;
/** … but in this share of the rounds any number. */
const CLEARANCE = 0.03;
/** Every second round overlooks this share of the places, so that it does not always choose the same. */
const OVERLOOKED = 0.02;
/**
 * What a whole sheet of rests counts while all blanks must find a place, in mean blanks: large rests are where they
 * will.
 */
const STEER = 2;
/** The same where some will be missing in any case, in smallest blanks: tells equals apart, never outweighs a blank. */
const TIE = 0.4;
/** The share of rounds that put strips together anew; the others move single pieces. */
const BY_STRIPS = 0.3;
/** So many first layouts are made of strips, each as chance has it. */
const FIRST_STRIPS = 2;

/** The first layout: largest first, in several ways; the one that leaves least out and costs least. */
export function construct(problem: NestProblem, effort: Effort): Nest {
  const orders: Strategy['order'][] = ['area', 'height', 'length', 'long side', 'value'];
  const [all, rules] = [allWanted(problem), rulesOf(problem)];
  let best: Nest | undefined;
  for (const order of orders) {
    for (const axis of problem.firstCuts) {
      const layout: OpenLayout = { sheets: [], used: problem.stock.map(() => 0), budget: Infinity };
      const strategy: Strategy = { order, noise: 0, overlooked: 0, stock: 'cheapest' };
      const missing = recreate(layout, all, { ...problem, firstCuts: [axis] }, rules, strategy, effort.seed);
      const nest: Nest = { sheets: finished(layout, problem, rules), missing };
      if (!best || compareNests(nest, best, problem) < 0) best = nest;
    }
  }
  for (let i = 0; i < FIRST_STRIPS; i++) {
    const nest = inStrips(problem, effort.seed);
    if (compareNests(nest, best!, problem) < 0) best = nest;
  }
  return best!;
}

/**
 * Ruin and recreate: takes a few pieces out, puts their blanks back where they now fit best, keeps what is no worse
 * than some rounds ago. Schrimpf et al. 2000, J. Comput. Phys. 159, 139–171; acceptance after Burke & Bykov 2017, EJOR
 * 258, 70–78; the budget that must be met, after Gardeyn & Wauters 2022, EJOR 301, 432–444.
 * @param budget - what the sheets may cost
 * @param score - the lower the better
 * @param enough - ends the search with the first layout for which it holds
 * @param move - makes another layout of one, within the budget
 */
export function improve(
  start: Nest,
  problem: NestProblem,
  budget: number,
  score: (nest: Nest) => number,
  enough: (nest: Nest) => boolean,
  effort: Effort,
  move: Move,
): Nest {
  const rules = rulesOf(problem);
  let now = start;
  let best = start;
  let nowScore = score(now);
  let bestScore = nowScore;
  const memory = new Array<number>(MEMORY).fill(nowScore);
  for (let round = 0; effort.rounds > 0 && !effort.stop(); round++) {
    effort.rounds--;
    const next = move(now, problem, budget, rules, effort.seed);
    if (enough(next)) return next;
    const nextScore = score(next);
    if (nextScore <= nowScore || nextScore <= memory[round % MEMORY]!) [now, nowScore] = [next, nextScore];
    if (nowScore < bestScore) [best, bestScore] = [now, nowScore];
    memory[round % MEMORY] = nowScore;
  }
  return best;
}

/**
 * What a layout lacks, in value, less a little for how large its rests are.
 * @param aim - whether all blanks are to find a place, or the most valuable ones
 */
export function shortfall(problem: NestProblem, aim: 'all' | 'most'): (nest: Nest) => number {
  const largest = Math.max(...problem.stock.map(({ length, width }) => moreThanSplit(length * width)));
  const values = problem.wanted.map(({ value }) => value);
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  const weight = (aim === 'all' ? STEER * mean : TIE * Math.min(...values)) / largest;
  return (nest) => missingValue(nest, problem) - weight * restsIn(nest);
}

export function restsIn(nest: Nest): number {
  return nest.sheets.reduce((sum, { rests }) => sum + rests, 0);
}

/** One round makes single pieces loose, another puts whole strips together anew. */
export const movedEither: Move = (nest, problem, budget, rules, draw) =>
  (draw() < BY_STRIPS ? movedStrips : movedPieces)(nest, problem, budget, rules, draw);

/** Makes a few pieces of some sheets loose and puts each back where it fits best now. */
export function movedPieces(
  nest: Nest,
  problem: NestProblem,
  budget: number,
  rules: PlaceRules,
  draw: () => number,
): Nest {
  const sheets = nest.sheets.slice();
  const used = problem.stock.map(() => 0);
  for (const { stock } of sheets) used[stock]!++;
  const touched: NestedSheet[] = [];
  const many = draw() < 0.5 ? 1 : draw() < 0.7 ? 2 : 3;
  for (let i = 0; i < many && sheets.length > 0; i++) {
    touched.push(...sheets.splice(Math.floor(draw() * sheets.length), 1));
  }
  const layout: OpenLayout = { sheets: [], used, budget: budget - costOf(nest, problem) };
  const loose = nest.missing.slice();
  for (const sheet of touched) {
    const root = copyRegion(sheet.root);
    if (draw() < 0.05) {
      loose.push(...kindsIn(root));
      used[sheet.stock]!--;
      layout.budget += problem.stock[sheet.stock]!.cost;
    } else {
      layout.sheets.push({ stock: sheet.stock, root });
    }
  }
  const handful = draw() < CLEARANCE ? draw() * blanksOn(touched) : draw() ** 2 * LARGEST_HANDFUL;
  loose.push(
    ...ruin(
      layout.sheets.map(({ root }) => root),
      Math.max(1, handful),
      draw,
    ),
  );
  for (let i = layout.sheets.length - 1; i >= 0; i--) {
    const { root, stock } = layout.sheets[i]!;
    tighten(root);
    if (root.children.length > 0) continue;
    layout.sheets.splice(i, 1);
    used[stock]!--;
    layout.budget += problem.stock[stock]!.cost;
  }
  const orders: Strategy['order'][] = ['area', 'area', 'height', 'length', 'long side', 'value'];
  const strategy: Strategy = {
    order: orders[Math.floor(draw() * orders.length)]!,
    noise: draw() < 0.3 ? 1 : 0.4 * draw(),
    overlooked: draw() < 0.5 ? 0 : OVERLOOKED,
    stock: draw() < 0.5 ? 'cheapest' : 'any',
  };
  const missing = recreate(layout, loose, problem, rules, strategy, draw);
  return { sheets: [...sheets, ...finished(layout, problem, rules)], missing };
}

function blanksOn(sheets: readonly NestedSheet[]): number {
  return sheets.reduce((sum, { root }) => sum + kindsIn(root).length, 0);
}
