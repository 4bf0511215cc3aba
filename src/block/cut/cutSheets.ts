import type { Blank } from './blank.js';
import { singleBlank } from './blank.js';
import { cheapestCover } from '../nest/cheapestCover.js';
import { checkCutting, sheetFor } from './checkCutting.js';
import type { CutFault } from './cutFault.js';
import { orderCuts } from './cutOrder.js';
import type { CutPart, CutStock, SawSetting } from '../nest/cutPart.js';
import { STAGES } from '../nest/cutPart.js';
import type { CutPlan, CutSheet } from './cutPlan.js';
import { cutSums } from './cutSums.js';
import type { Nest, NestProblem, StockSize } from '../nest/nest.js';
import { compareSums, costOf, missingValue, SAME_SUM } from '../nest/nest.js';
import { areaBound, nestAll } from '../nest/nestAll.js';
import { fitsOn } from '../nest/recreate.js';
import { seeded } from '../nest/seeded.js';
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
  /** 0..1 of the rounds for this foam; it may end before 1, when no better plan is possible. */
  readonly share: number;
  readonly sheets: number;
}

/** Rounds without a block, and for each block: 100 blocks in well under a second, 1,000 in a few. */
const BASE_ROUNDS = 5000;
const ROUNDS_PER_BLOCK = 8;
/** What foam from an offcut counts against the same from a new sheet: it goes first, but the smallest that serves. */
const OFFCUT_COST = 0.05;
/** So many rounds between two words of progress. */
const PROGRESS_ROUNDS = 500;

/**
 * Plans how all blocks are cut from the stock: edge-to-edge cuts in at most three stages, the cheapest sheets, offcuts
 * first, the rests as large as can be. What can't be cut is left out, with a fault that says why; the rest is planned
 * still.
 * @param parts - rectangles in mm; their numbers differ
 * @param stock - what there is; prices decide where all new sheets of a foam have one, else area does
 * @throws where two parts carry one number
 */
export function cutSheets(
  parts: readonly CutPart[],
  stock: readonly CutStock[],
  saw: SawSetting,
  effort: CutEffort = {},
): CutPlan {
  const checked = checkCutting(parts, stock, saw);
  const faults: CutFault[] = [...checked.faults];
  const stop = deadline(effort.seconds);
  const sheets: CutSheet[] = [];
  let least = 0;
  for (const foam of new Set(checked.parts.map((part) => part.foam))) {
    const ofFoam = checked.parts.filter((part) => part.foam === foam);
    const sizes = checked.stock.filter((sheet) => sheet.foam === foam);
    const { nest, blanks } = planFoam(foam, ofFoam, sizes, saw, effort, stop);
    for (const { stock: index, root } of inShopOrder(nest, sizes)) {
      sheets.push(orderCuts(sheets.length + 1, sizes[index]!, root, blanks, saw));
    }
    least += leastArea(ofFoam, sizes, saw);
    for (const { part } of nest.missing.flatMap((kind) => blanks[kind]!.parts)) {
      faults.push({ kind: 'stock-used-up', part: part.id, foam, needs: sheetFor(part, saw) });
    }
  }
  const planned = new Set(sheets.flatMap(({ blanks }) => blanks.flatMap((blank) => blank.parts.map(({ id }) => id))));
  const leftOut = parts.map(({ id }) => id).filter((id) => !planned.has(id));
  return { sheets, leftOut, faults, sums: cutSums(sheets, stock, least) };
}

/**
 * Tapered blocks head to tail and every sheet ripped first; where that does not meet the area bound, sheets cross-cut
 * first and tapered blocks singly are tried too, and taken where that is cheaper.
 */
function planFoam(
  foam: string,
  parts: readonly CutPart[],
  sizes: readonly CutStock[],
  saw: SawSetting,
  effort: CutEffort,
  stop: () => boolean,
): { nest: Nest; blanks: Blank[] } {
  const stock = stockSizes(sizes, saw);
  const fits = (blank: Blank) => stock.some((size) => fitsOn(withKerf(blank, saw), size));
  const { pairs, singles } = pairTapered(parts, saw.kerf, fits);
  const sets = [[...pairs, ...singles.map(singleBlank)], ...(pairs.length > 0 ? [parts.map(singleBlank)] : [])];
  const ways = sets.flatMap((blanks) => [
    { blanks, firstCuts: RIP },
    { blanks, firstCuts: EITHER },
  ]);
  const rounds = Math.ceil((effort.rounds ?? BASE_ROUNDS + ROUNDS_PER_BLOCK * parts.length) / ways.length);
  const watch = watched(foam, rounds * ways.length, effort, stop);
  const plans: { nest: Nest; blanks: Blank[]; missing: number; cost: number }[] = [];
  for (const { blanks, firstCuts } of ways) {
    const problem = nestProblem(blanks, stock, saw, firstCuts);
    const nest = nestAll(problem, { rounds, seed: seeded(1), stop: watch.stop }, watch.found);
    const [missing, cost] = [missingValue(nest, problem), costOf(nest, problem)];
    plans.push({ nest, blanks, missing, cost });
    if (missing === 0 && cost <= areaBound(problem) * (1 + SAME_SUM)) break;
  }
  return plans.reduce((best, plan) => (compareSums(plan, best) < 0 ? plan : best));
}

/** Counts the rounds, tells the progress of them, and asks whether to stop. */
function watched(foam: string, rounds: number, { progress }: CutEffort, stop: () => boolean) {
  let done = 0;
  let sheets = 0;
  return {
    found: (nest: Nest) => {
      sheets = nest.sheets.length;
      progress?.({ foam, share: Math.min(1, done / rounds), sheets });
    },
    stop: () => {
      if (++done % PROGRESS_ROUNDS === 0) progress?.({ foam, share: Math.min(1, done / rounds), sheets });
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

function stockSizes(sizes: readonly CutStock[], { kerf, trim }: SawSetting): StockSize[] {
  const fresh = sizes.filter(({ offcut }) => !offcut);
  const priced = fresh.length > 0 && fresh.every(({ price }) => price !== undefined && price > 0);
  const rate = priced ? Math.min(...fresh.map(({ price, length, width }) => price! / (length * width))) : 1;
  return sizes.map(({ length, width, count, price, offcut }) => ({
    length: length - 2 * trim + kerf,
    width: width - 2 * trim + kerf,
    count: count ?? Infinity,
    cost: offcut ? OFFCUT_COST * rate * length * width : priced ? price! : length * width,
  }));
}

function withKerf({ length, height, mayTurn }: Blank, { kerf }: SawSetting) {
  return { length: length + kerf, height: height + kerf, mayTurn };
}

/** The least area of sheets whose area covers the blocks with their saw cuts, mm². */
function leastArea(parts: readonly CutPart[], sizes: readonly CutStock[], saw: SawSetting): number {
  const blanks = parts.map(singleBlank).map((blank) => withKerf(blank, saw));
  const area = blanks.reduce((sum, { length, height }) => sum + length * height, 0);
  const stock = stockSizes(sizes, saw).map((size, i) => ({ ...size, cost: sizes[i]!.length * sizes[i]!.width }));
  return cheapestCover(area, stock);
}

/** Offcuts first, then sizes as listed; the fullest sheet of a size first, so that the rest ends on the last. */
function inShopOrder(nest: Nest, sizes: readonly CutStock[]) {
  const rank = (stock: number) => (sizes[stock]!.offcut ? 0 : sizes.length) + stock;
  return [...nest.sheets].sort((a, b) => rank(a.stock) - rank(b.stock) || b.value - a.value);
}

function deadline(seconds: number | undefined): () => boolean {
  if (seconds === undefined) return () => false;
  const end = performance.now() + 1000 * seconds;
  return () => performance.now() >= end;
}
