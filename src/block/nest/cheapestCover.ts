import type { StockSize } from './nest.js';

/**
 * The least any sheets can cost whose area together is at least `area` (the area bound: no layout can be cheaper).
 * Infinity where all the stock together is too small.
 * @param area - of all blanks, one saw cut added to each side, mm²
 */
export function cheapestCover(area: number, stock: readonly StockSize[]): number {
  const sizes = stock
    .map(({ length, width, count, cost }) => ({ area: length * width, count, cost }))
    .sort((a, b) => a.cost / a.area - b.cost / b.area);
  let least = Infinity;
  let steps = 0;

  function cover(index: number, rest: number, spent: number): void {
    if (rest <= AREA_ROUNDING * area) {
      least = Math.min(least, spent);
      return;
    }
    const size = sizes[index];
    if (!size || steps++ > MOST_STEPS || spent + (rest / size.area) * size.cost >= least) return;
    const most = Math.min(size.count, Math.ceil(rest / size.area - AREA_ROUNDING));
    for (let n = most; n >= 0; n--) cover(index + 1, rest - n * size.area, spent + n * size.cost);
  }

  cover(0, area, 0);
  return steps > MOST_STEPS ? fractionalCover(area, sizes) : least;
}

/** Below this share an area is rounding in the sum, not foam. */
const AREA_ROUNDING = 1e-9;
/**
 * With many sizes in stock the exact count takes too long; then parts of sheets are counted, which is still a bound.
 */
const MOST_STEPS = 100_000;

function fractionalCover(area: number, sizes: { area: number; count: number; cost: number }[]): number {
  let rest = area;
  let cost = 0;
  for (const size of sizes) {
    const share = Math.min(rest / size.area, size.count);
    rest -= share * size.area;
    cost += share * size.cost;
  }
  return rest > AREA_ROUNDING * area ? Infinity : cost;
}
