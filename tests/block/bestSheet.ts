import type { Nest, NestProblem } from '../../src/block/nest/nest.js';
import { compareNests } from '../../src/block/nest/nest.js';
import type { Effort } from '../../src/block/nest/search.js';
import { construct, improve, movedEither, shortfall } from '../../src/block/nest/search.js';

/**
 * The most valuable set of blanks that one sheet yields: the published form of the cutting problem, on the engine that
 * plans the sheets. Useful with one sheet left and more blanks wanted than it holds.
 * @param problem - one size of stock; one sheet of it is used
 * @returns the sheet and what of the wanted is missing; its `value` is what was to be made large
 */
export function bestSheet(problem: NestProblem, effort: Effort): Nest {
  const [size] = problem.stock;
  if (!size || problem.stock.length !== 1) throw new Error('bestSheet takes one size of stock');
  const oneSheet: NestProblem = { ...problem, stock: [{ ...size, count: 1 }] };
  const score = shortfall(oneSheet, 'most');
  const complete = (nest: Nest) => nest.missing.length === 0;
  let best: Nest | undefined;
  for (let start = 0; start < STARTS && !(best && complete(best)); start++) {
    const first = construct({ ...oneSheet, firstCuts: [problem.firstCuts[start % problem.firstCuts.length]!] }, effort);
    const share: Effort = { ...effort, rounds: Math.ceil(effort.rounds / STARTS) };
    const nest = improve(first, oneSheet, size.cost, score, complete, share, movedEither);
    if (!best || compareNests(nest, best, oneSheet) < 0) best = nest;
  }
  return best!;
}

/** A single sheet offers few ways out of a dead end: several tries, begun with one first cut and the other in turn. */
const STARTS = 4;
