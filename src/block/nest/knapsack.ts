import { ROUNDING } from './cutPart.js';

/** What may be put into a room: how much of it that takes, mm, and what it is worth. */
export interface Packable {
  readonly size: number;
  readonly value: number;
}

/** How many different sums of sizes are told apart at most; of sums in one such step the most valuable is kept. */
const MOST_STEPS = 2048;

// What the last call left: nothing is allocated while a search goes on.
const value = new Float64Array(MOST_STEPS + 1);
const size = new Float64Array(MOST_STEPS + 1);
let from = new Int16Array(64 * (MOST_STEPS + 1));

/**
 * The most valuable choice that fits a room, each at most once (R. Bellman, "Dynamic Programming", 1957, for the
 * knapsack; P. C. Gilmore and R. E. Gomory, Operations Research 13, 1965, 94–120, put it to each stage of cutting).
 * Sums are exact but for rooms that are worth telling apart in more than `steps`, where a little may be missed; what is
 * chosen always fits.
 * @returns indices of items, the last first
 */
export function mostValuable(items: readonly Packable[], room: number, steps = MOST_STEPS): number[] {
  const width = steps + 1;
  if (from.length < items.length * width) from = new Int16Array(2 * items.length * width);
  from.fill(-1, 0, items.length * width);
  value.fill(-1, 0, width);
  [value[0], size[0]] = [0, 0];
  const perStep = steps / (room + ROUNDING);
  let highest = 0;
  items.forEach((item, i) => {
    if (item.size > room + ROUNDING) return;
    const row = i * width;
    const most = Math.min(highest, Math.floor((room + ROUNDING - item.size) * perStep));
    for (let at = most; at >= 0; at--) {
      if (value[at]! < 0) continue;
      const total = size[at]! + item.size;
      if (total > room + ROUNDING) continue;
      const to = Math.floor(total * perStep);
      const worth = value[at]! + item.value;
      if (worth < value[to]! || (worth === value[to] && total >= size[to]!)) continue;
      [value[to], size[to], from[row + to]] = [worth, total, at];
      if (to > highest) highest = to;
    }
  });
  let at = 0;
  for (let step = 0; step <= highest; step++) if (value[step]! > value[at]!) at = step;
  const chosen: number[] = [];
  for (let i = items.length - 1; i >= 0; i--) {
    const before = from[i * width + at]!;
    if (before < 0) continue;
    chosen.push(i);
    at = before;
  }
  return chosen;
}
