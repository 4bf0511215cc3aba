import type { StockSize } from './nest.js';
import { SAME_SUM } from './nest.js';

/** So many sheets of each size of stock, and what they cost. */
export interface SheetSet {
  readonly counts: readonly number[];
  readonly cost: number;
}

/** No more sets than these are tried, the cheapest. */
const MOST_SETS = 12;
/** With many sizes in stock there are more sets than can be gone through. */
const MOST_STEPS = 20_000;

/**
 * What sheets may be taken whose area covers the blanks and which cost less than `below`: the cheapest first.
 * @param area - of all blanks, one saw cut added to each side, mm²
 */
export function sheetSets(area: number, stock: readonly StockSize[], below: number): SheetSet[] {
  const sets: SheetSet[] = [];
  let steps = 0;

  function choose(index: number, rest: number, cost: number, counts: readonly number[]): void {
    if (steps++ > MOST_STEPS || cost >= below * (1 - SAME_SUM)) return;
    const size = stock[index];
    if (!size) {
      if (rest <= SAME_SUM * area) sets.push({ counts, cost });
      return;
    }
    const affordable = size.cost > 0 ? Math.ceil((below - cost) / size.cost) : size.count;
    const most = Math.min(size.count, affordable, Math.ceil(area / (size.length * size.width)) + SPARE);
    for (let n = 0; n <= most; n++) {
      choose(index + 1, rest - n * size.length * size.width, cost + n * size.cost, [...counts, n]);
    }
  }

  choose(0, area, 0, []);
  return sets.sort((a, b) => a.cost - b.cost).slice(0, MOST_SETS);
}

/** So many sheets more than would do without waste may be needed of a size. */
const SPARE = 24;
