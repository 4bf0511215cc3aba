import type { Blank } from './blank.js';
import { singleBlank } from './blank.js';
import { leastStock, stockSizes, withKerf, type LeastStock } from './leastStock.js';
import type { CutPart, CutStock, SawSetting } from '../nest/cutPart.js';
import { STAGES } from '../nest/cutPart.js';
import type { Nest, NestProblem, StockSize } from '../nest/nest.js';
import { compareSums, costOf, missingValue, SAME_SUM } from '../nest/nest.js';
import { drawRestsTogether, nestAll } from '../nest/nestAll.js';
import { fitsOn } from '../nest/recreate.js';
import { pairTapered } from './taperPair.js';

/** How hard to look for a better plan. */
export interface CutEffort {
  /** Decides what is found: the same rounds give the same plan. By the number of blocks where absent. */
  readonly rounds?: number;
  /** Stops early and keeps the best so far. */
  readonly seconds?: number;
  /** Told now and then how far it is and how many sheets the best plan of this foam takes. */
  readonly progress?: (done: CutProgress) => void;
}

export interface CutProgress {
  readonly foam: string;
  /** Layouts looked at for this foam so far. */
  readonly rounds: number;
  readonly sheets: number;
}

/** Rounds for each set of sheets that might do: a hundred blocks take a second or so. */
const ROUNDS = 2000;
/** Once the sheets are settled so many rounds, a share of those, go to larger rests. */
const REST_SHARE = 0.4;
/** So many rounds between two words of progress. */
const PROGRESS_ROUNDS = 500;

/**
 * Tapered blocks head to tail and every sheet ripped first; where that does not meet the area bound, sheets cross-cut
 * first and tapered blocks singly are tried too, and taken where that is cheaper.
 */
export function planFoam(
  foam: string,
  parts: readonly CutPart[],
  sizes: readonly CutStock[],
  saw: SawSetting,
  effort: CutEffort,
  stop: () => boolean,
): FoamPlan {
  const stock = stockSizes(sizes, saw);
  const fits = (blank: Blank) => stock.some((size) => fitsOn(withKerf(blank, saw), size));
  const { pairs, singles } = pairTapered(parts, saw.kerf, fits);
  const sets = [[...pairs, ...singles.map(singleBlank)], ...(pairs.length > 0 ? [parts.map(singleBlank)] : [])];
  const ways = sets.flatMap((blanks) => [
    { blanks, firstCuts: RIP },
    { blanks, firstCuts: EITHER },
  ]);
  const least = leastStock(parts, sizes, saw);
  const watch = watched(foam, effort, stop);
  const rounds = Math.ceil((effort.rounds ?? ROUNDS) / ways.length);
  let best: Tried | undefined;
  for (let pass = 1; pass === 1 || (effort.seconds !== undefined && !stop()); pass++) {
    const isSettled = ways.some(({ blanks, firstCuts }) => {
      const problem = nestProblem(blanks, stock, saw, firstCuts);
      const below = best && best.missing === 0 ? best.cost : Infinity;
      const nest = nestAll(problem, { rounds: pass * rounds, seed: pass, stop: watch.stop }, below, watch.found);
      const plan = { nest, blanks, problem, missing: missingValue(nest, problem), cost: costOf(nest, problem) };
      if (!best || compareSums(plan, best) < 0) best = plan;
      return best.missing === 0 && best.cost <= least.cost * (1 + SAME_SUM);
    });
    if (isSettled) break;
  }
  const { nest, problem } = best!;
  const forRests = { rounds: Math.ceil(REST_SHARE * rounds), seed: 1, stop };
  const isLeast = best!.missing === 0 && best!.cost <= least.cost * (1 + SAME_SUM);
  return { ...best!, nest: drawRestsTogether(nest, problem, forRests), least, isLeast };
}

/** How the blocks of one foam are cut. */
export interface FoamPlan extends Tried {
  readonly least: LeastStock;
  /** Whether it is proved that no way of cutting costs less. */
  readonly isLeast: boolean;
}

interface Tried {
  readonly nest: Nest;
  readonly blanks: readonly Blank[];
  readonly problem: NestProblem;
  readonly missing: number;
  readonly cost: number;
}

/** Counts the rounds, tells the progress of them, and asks whether to stop. */
function watched(foam: string, { progress }: CutEffort, stop: () => boolean) {
  let rounds = 0;
  let sheets = 0;
  return {
    found: (nest: Nest) => {
      sheets = nest.sheets.length;
      progress?.({ foam, rounds, sheets });
    },
    stop: () => {
      if (++rounds % PROGRESS_ROUNDS === 0) progress?.({ foam, rounds, sheets });
      return stop();
    },
  };
}

const RIP = [1] as const;
const EITHER = [1, 0] as const;

function nestProblem(
  blanks: readonly Blank[],
  stock: readonly StockSize[],
  saw: SawSetting,
  firstCuts: NestProblem['firstCuts'],
): NestProblem {
  const wanted = blanks.map((blank) => {
    const size = withKerf(blank, saw);
    return { ...size, mayTurn: blank.mayTurn, count: 1, value: size.length * size.height };
  });
  return { wanted, stock, stages: STAGES, firstCuts };
}
