import type { CutPart, CutStock, SawSetting } from '../nest/cutPart.js';
import { cheapestCover } from '../nest/cheapestCover.js';
import type { StockSize } from '../nest/nest.js';
import { SAME_SUM } from '../nest/nest.js';
import type { Blank } from './blank.js';

/** What foam from an offcut counts against the same from a new sheet: it goes first, but the smallest that serves. */
const OFFCUT_COST = 0.05;

/**
 * The sheets as a search sees them: without their trimmings, one saw cut added to each side, mm. Their costs are prices
 * where all new sheets have one, else areas.
 */
export function stockSizes(sizes: readonly CutStock[], { kerf, trim }: SawSetting): StockSize[] {
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

export function withKerf({ length, height, mayTurn }: Omit<Blank, 'parts'>, { kerf }: SawSetting) {
  return { length: length + kerf, height: height + kerf, mayTurn };
}

/** What no way of cutting the blocks can do with less of. */
export interface LeastStock {
  /** mm². */
  readonly area: number;
  /** Offcuts and new sheets together. */
  readonly sheets: number;
  /** As `stockSizes` counts it. */
  readonly cost: number;
}

/** The least whose area covers the blocks with their saw cuts; infinite where all the stock is too little. */
export function leastStock(parts: readonly CutPart[], sizes: readonly CutStock[], saw: SawSetting): LeastStock {
  const area = parts.reduce((sum, part) => sum + leastArea(part, saw), 0);
  const stock = stockSizes(sizes, saw);
  const least = (costOf: (size: StockSize, i: number) => number) =>
    cheapestCover(
      area * (1 - SAME_SUM),
      stock.map((size, i) => ({ ...size, cost: costOf(size, i) })),
    );
  return {
    area: least((_, i) => sizes[i]!.length * sizes[i]!.width),
    sheets: least(() => 1),
    cost: least(({ cost }) => cost),
  };
}

/** A block by itself takes its rectangle; one of two tapered ones at least its own area and one saw cut along it. */
function leastArea({ length, height, taper }: CutPart, { kerf }: SawSetting): number {
  if (!taper) return (length + kerf) * (height + kerf);
  return length * (height - (Math.abs(taper.top) + Math.abs(taper.bottom)) / 2 + kerf);
}
