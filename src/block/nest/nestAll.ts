import { cheapestCover } from './cheapestCover.js';
import type { Nest, NestProblem } from './nest.js';
import { compareNests, costOf, missingValue, SAME_SUM } from './nest.js';
import { eachBlank } from './region.js';
import { construct, improve, shortfall, restsIn } from './search.js';
import type { Effort } from './search.js';

/** The share of the rounds that goes to larger rests once the sheets are settled. */
const REST_SHARE = 0.15;

/**
 * All blanks on the cheapest sheets: a first layout, then again and again one that has to be cheaper, until the area
 * bound is met or the effort is spent; at the end the rests are drawn together.
 * @param found - told of every better layout
 */
export function nestAll(problem: NestProblem, effort: Effort, found: (nest: Nest) => void = () => undefined): Nest {
  const bound = areaBound(problem) * (1 + SAME_SUM);
  const forRests = Math.round(effort.rounds * REST_SHARE);
  effort.rounds -= forRests;
  let best = construct(problem, effort);
  found(best);
  for (;;) {
    const complete = best.missing.length === 0;
    if (complete && costOf(best, problem) <= bound) break;
    const budget = complete ? costOf(best, problem) * (1 - 2 * SAME_SUM) : Infinity;
    const before = best;
    const better = (nest: Nest) => compareNests(nest, before, problem) < 0;
    const score = shortfall(problem, complete ? 'all' : 'most');
    const next = improve(cutBack(best, problem, budget), problem, budget, score, better, effort);
    if (!better(next)) break;
    best = next;
    found(best);
  }
  effort.rounds = Math.min(effort.rounds + forRests, forRests);
  return drawRestsTogether(best, problem, effort);
}

/** The least the sheets can cost: their area must cover the blanks. */
export function areaBound({ wanted, stock }: NestProblem): number {
  return cheapestCover(
    wanted.reduce((sum, { length, height, count }) => sum + length * height * count, 0),
    stock,
  );
}

/** Gives sheets up, those that hold least for their cost first, until the budget is met. */
function cutBack(nest: Nest, problem: NestProblem, budget: number): Nest {
  const worthKeeping = [...nest.sheets].sort(
    (a, b) => b.value / problem.stock[b.stock]!.cost - a.value / problem.stock[a.stock]!.cost,
  );
  const missing = nest.missing.slice();
  while (worthKeeping.length > 0 && costOf({ sheets: worthKeeping, missing }, problem) > budget) {
    const sheet = worthKeeping.pop()!;
    eachBlank(sheet.root, (blank) => missing.push(blank.kind));
  }
  return { sheets: worthKeeping, missing };
}

function drawRestsTogether(best: Nest, problem: NestProblem, effort: Effort): Nest {
  const missing = missingValue(best, problem) * (1 + SAME_SUM);
  const cost = costOf(best, problem) * (1 + SAME_SUM);
  const score = (nest: Nest) => (missingValue(nest, problem) > missing ? Infinity : -restsIn(nest));
  return improve(best, problem, cost, score, () => false, effort);
}
