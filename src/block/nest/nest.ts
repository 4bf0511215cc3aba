import type { BlankKind, PlaceRules } from './place.js';
import { worth } from './place.js';
import type { Region } from './region.js';
import { eachBlank, eachOpen } from './region.js';

/** A cutting problem in numbers: what is wanted, what it may be cut from. Sizes with one saw cut added, mm. */
export interface NestProblem {
  readonly wanted: readonly WantedBlank[];
  readonly stock: readonly StockSize[];
  /** The longest chain of cuts. */
  readonly stages: number;
  /** How the first cut of a sheet may run: 1 along its length (a rip), 0 across (see `wholeSheet`). */
  readonly firstCuts: readonly (0 | 1)[];
}

export interface WantedBlank extends BlankKind {
  readonly count: number;
  /** What one is worth: its area where all are to be cut. */
  readonly value: number;
}

export interface StockSize {
  readonly length: number;
  readonly width: number;
  /** `Infinity` where more can be had. */
  readonly count: number;
  readonly cost: number;
}

/** Sheets with what is cut from them, and what found no place (kinds by number, once for each that is missing). */
export interface Nest {
  readonly sheets: readonly NestedSheet[];
  readonly missing: readonly number[];
}

export interface NestedSheet {
  readonly stock: number;
  readonly root: Region;
  /** Value of what is cut from it. */
  readonly value: number;
  /** What its rests are worth to later blanks; a number to compare. */
  readonly rests: number;
}

export function costOf(nest: Nest, problem: NestProblem): number {
  let cost = 0;
  for (const sheet of nest.sheets) cost += problem.stock[sheet.stock]!.cost;
  return cost;
}

export function missingValue(nest: Nest, problem: NestProblem): number {
  let value = 0;
  for (const kind of nest.missing) value += problem.wanted[kind]!.value;
  return value;
}

/** Of all blanks, one saw cut added to each side, mm². */
export function areaOf({ wanted }: Pick<NestProblem, 'wanted'>): number {
  return wanted.reduce((sum, { length, height, count }) => sum + length * height * count, 0);
}

/** Values and costs nearer than this share are the same: they are sums, added up in different orders. */
export const SAME_SUM = 1e-9;

/** Below 0 where `a` is better: less missing, or as little and cheaper. 0 where they are equal. */
export function compareSums(a: { missing: number; cost: number }, b: { missing: number; cost: number }): number {
  const differ = (x: number, y: number) => Math.abs(x - y) > SAME_SUM * (x + y);
  if (differ(a.missing, b.missing)) return a.missing - b.missing;
  return differ(a.cost, b.cost) ? a.cost - b.cost : 0;
}

export function compareNests(a: Nest, b: Nest, problem: NestProblem): number {
  const sums = (nest: Nest) => ({ missing: missingValue(nest, problem), cost: costOf(nest, problem) });
  return compareSums(sums(a), sums(b));
}

/** A sheet with its value and rests reckoned up. */
export function valued(stock: number, root: Region, problem: NestProblem, rules: PlaceRules): NestedSheet {
  let value = 0;
  eachBlank(root, (blank) => (value += problem.wanted[blank.kind]!.value));
  return { stock, root, value, rests: restsOf(root, rules) };
}

export function rulesOf(problem: NestProblem): PlaceRules {
  const sides = problem.wanted.map(({ length, height }) => Math.min(length, height));
  return { stages: problem.stages, shortest: Math.min(...sides) };
}

/** One number for every wanted blank: its kind. */
export function allWanted(problem: NestProblem): number[] {
  return problem.wanted.flatMap(({ count }, kind) => new Array<number>(count).fill(kind));
}

function restsOf(root: Region, rules: PlaceRules): number {
  let sum = 0;
  eachOpen(root, (open) => (sum += worth(open.free, open.across, open.level, rules)));
  return sum;
}
