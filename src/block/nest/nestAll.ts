import type { Nest, NestProblem } from './nest.js';
import { areaOf, costOf, missingValue, SAME_SUM } from './nest.js';
import { packed } from './pack.js';
import { construct, improve, movedEither, movedPieces, restsIn, shortfall, type Effort } from './search.js';
import { seeded } from './seeded.js';
import { sheetSets } from './sheetSets.js';

/** How long a search goes on, and which of its kind it is. */
export interface Search {
  /** For each set of sheets that might do. `rounds` and `seed` alone decide what is found. */
  readonly rounds: number;
  readonly seed: number;
  /** Asked before each round. */
  readonly stop: () => boolean;
}

/**
 * All blanks on the cheapest sheets that hold them: sets of sheets are tried from the area bound up until one holds
 * them all, each with numbers drawn anew, so that what is found on a set does not hang on what else was in stock. Where
 * all the stock is too little, the most valuable blanks.
 * @param below - nothing is looked for that costs as much
 * @param found - told of every better layout
 */
export function nestAll(
  problem: NestProblem,
  search: Search,
  below = Infinity,
  found: (nest: Nest) => void = () => undefined,
): Nest {
  let best = construct(problem, effortOf(search));
  found(best);
  const most = Math.min(below, best.missing.length === 0 ? costOf(best, problem) : Infinity);
  for (const { counts } of sheetSets(areaOf(problem), problem.stock, most)) {
    const set = { ...problem, stock: problem.stock.map((size, i) => ({ ...size, count: counts[i]! })) };
    const nest = packed(set, effortOf(search));
    if (!nest) continue;
    found(nest);
    return nest;
  }
  if (best.missing.length === 0) return best;
  best = improve(best, problem, Infinity, shortfall(problem, 'most'), () => false, effortOf(search), movedEither);
  found(best);
  return best;
}

const effortOf = ({ rounds, seed, stop }: Search): Effort => ({ rounds, seed: seeded(seed), stop });

/** The same sheets, what is left of them in larger pieces. */
export function drawRestsTogether(best: Nest, problem: NestProblem, search: Search): Nest {
  const missing = missingValue(best, problem) * (1 + SAME_SUM);
  const cost = costOf(best, problem) * (1 + SAME_SUM);
  const score = (nest: Nest) => (missingValue(nest, problem) > missing ? Infinity : -restsIn(nest));
  return improve(best, problem, cost, score, () => false, effortOf(search), movedPieces);
}
