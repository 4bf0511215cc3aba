import { costOf, costsWith, leastCost, type CostTable } from './costTable.js';
import { exchanged, filledUp } from './exchange.js';

/** A choice of at most so many columns, so that each row takes the cheapest of them. */
export interface Medians {
  /** The columns taken. */
  readonly columns: readonly number[];
  /** Sum over all rows. */
  readonly cost: number;
  /** No choice costs less. */
  readonly bound: number;
}

/** Rounds of raising the bound; it rarely moves after the first hundred. */
const ROUNDS = 400;
/**
 * Rounds without a better bound before smaller steps are taken, and the smallest step, as a share of what would close
 * the gap were the bound straight.
 */
const PATIENCE = 12;
const SMALLEST_STEP = 1e-3;
/** Costs that differ by less, as a share, are the same but for rounding. */
const ENOUGH = 1e-9;
/** A choice that the bound suggests is improved if it costs at most so many times what is known. */
const PROMISING = 1.05;

/**
 * Chooses at most `count` columns of a table so that the sum of each row's cheapest chosen entry is least; rows that no
 * choice serves make the cost infinite.
 *
 * The choice comes from adding greedily and exchanging one for one; the bound from Lagrangian relaxation of "each row
 * takes one", raised by subgradient steps, whose own choices are tried too. Where cost and bound meet, the choice is
 * proved best.
 * Source: G. Cornuéjols, M. L. Fisher, G. L. Nemhauser, "Location of bank accounts to optimize float", Management
 * Science 23 (1977).
 *
 * @param before columns of a choice of fewer: the search begins there
 */
export function pMedian(table: CostTable, count: number, before: readonly number[] = []): Medians {
  const { rows } = table;
  const worth = (cost: number) => ENOUGH * Math.max(1, cost);
  let columns = filledUp(table, before, count);
  let cost = costOf(table, columns);
  if (rows.length === 0 || !Number.isFinite(cost)) return { columns, cost, bound: rows.length === 0 ? 0 : Infinity };
  columns = exchanged(table, columns, worth(cost));
  cost = costOf(table, columns);

  // Each row's price begins at what it costs now.
  let prices = costsWith(table, columns);
  let best = prices;
  let bound = leastCost(table);
  let step = 2;
  let waited = 0;
  const tried = new Set([keyOf(columns)]);
  for (let round = 0; round < ROUNDS && step > SMALLEST_STEP && cost - bound > worth(cost); round++) {
    const { value, taken, times } = relaxed(table, prices, count);
    if (value > bound + ENOUGH * Math.abs(value)) {
      bound = value;
      best = prices;
      waited = 0;
    } else if (++waited >= PATIENCE) {
      step /= 2;
      waited = 0;
      prices = best;
    }
    if (!tried.has(keyOf(taken))) {
      tried.add(keyOf(taken));
      const full = filledUp(table, taken, count);
      if (costOf(table, full) < PROMISING * cost) {
        const improved = exchanged(table, full, worth(cost));
        const now = costOf(table, improved);
        if (now < cost) [columns, cost] = [improved, now];
      }
    }
    const size = times.reduce((sum, n) => sum + (n - 1) ** 2, 0);
    if (size === 0) break;
    const move = (step * (1.0001 * cost - value)) / size;
    prices = prices.map((p, i) => p - move * (times[i]! - 1));
  }
  return { columns, cost, bound: Math.min(bound, cost) };
}

/**
 * What the best columns cost at least when each row pays its price and takes as many columns as pay: their sum, those
 * columns, and how many each row takes.
 */
function relaxed({ rows, columns }: CostTable, prices: Float64Array, count: number) {
  const gains = new Float64Array(columns);
  rows.forEach(({ column, cost }, i) => {
    const price = prices[i]!;
    for (let at = 0; at < column.length && cost[at]! < price; at++) gains[column[at]!]! += cost[at]! - price;
  });
  const taken = lowest(gains, count);
  const value = taken.reduce(
    (sum, c) => sum + gains[c]!,
    prices.reduce((sum, p) => sum + p, 0),
  );
  const isTaken = new Uint8Array(columns);
  for (const c of taken) isTaken[c] = 1;
  const times = new Float64Array(rows.length);
  rows.forEach(({ column, cost }, i) => {
    for (let at = 0; at < column.length && cost[at]! < prices[i]!; at++) times[i]! += isTaken[column[at]!]!;
  });
  return { value, taken, times };
}

/** The places of the lowest values below 0, at most so many, the lowest first. */
function lowest(values: Float64Array, count: number): number[] {
  const places: number[] = [];
  values.forEach((value, c) => {
    if (value >= 0 || (places.length === count && value >= values[places[count - 1]!]!)) return;
    let at = places.length;
    while (at > 0 && values[places[at - 1]!]! > value) at--;
    places.splice(at, 0, c);
    if (places.length > count) places.pop();
  });
  return places;
}

function keyOf(columns: readonly number[]): string {
  return [...columns].sort((a, b) => a - b).join(' ');
}
