/** A choice of at most so many columns, so that each row takes the cheapest of them. */
export interface Choice {
  /** The columns taken. */
  readonly columns: readonly number[];
  /** Sum over all rows. */
  readonly cost: number;
  /** No choice costs less. */
  readonly bound: number;
}

/** Rounds of raising the bound; it rarely moves after the first hundred. */
const ROUNDS = 400;
/** Rounds without a better bound before smaller steps are taken. */
const PATIENCE = 12;

/**
 * Chooses at most `count` columns of a table so that the sum of each row's cheapest chosen entry is least; infinite entries are not allowed.
 *
 * The choice comes from adding greedily and exchanging one for one; the bound from Lagrangian relaxation of "each row takes one", raised by
 * subgradient steps, whose own choices are tried too. Where cost and bound meet, the choice is proved best.
 * Source: G. Cornuéjols, M. L. Fisher, G. L. Nemhauser, "Location of bank accounts to optimize float", Management Science 23 (1977).
 *
 * @param costs one array of row costs a column
 */
export function cheapest(costs: readonly Float64Array[], count: number, before: readonly number[] = []): Choice {
  const rows = costs[0]?.length ?? 0;
  let columns = exchanged(costs, added(costs, before, count));
  let cost = costOf(costs, columns);
  if (rows === 0 || !Number.isFinite(cost)) return { columns, cost, bound: rows === 0 ? 0 : Infinity };

  // Each row's price begins at what it costs now.
  let prices = Float64Array.from({ length: rows }, (_, i) => Math.min(...columns.map((c) => costs[c]![i]!)));
  let best = prices;
  let bound = -Infinity;
  let step = 2;
  let waited = 0;
  for (let round = 0; round < ROUNDS && cost - bound > ENOUGH * Math.max(1, cost); round++) {
    const gains = costs.map((column) => gainOf(column, prices));
    const order = gains.map((_, c) => c).sort((a, b) => gains[a]! - gains[b]!);
    const taken = order.slice(0, count).filter((c) => gains[c]! < 0);
    const value = prices.reduce((sum, p) => sum + p, 0) + taken.reduce((sum, c) => sum + gains[c]!, 0);
    if (value > bound + ENOUGH * Math.abs(value)) {
      bound = value;
      best = prices;
      waited = 0;
    } else if (++waited >= PATIENCE) {
      step /= 2;
      waited = 0;
      prices = best.slice();
    }
    const tried = exchangeIfBetter(costs, order.slice(0, count), cost);
    if (tried) ({ columns, cost } = tried);
    const over = Float64Array.from(prices, (p, i) => taken.reduce((sum, c) => sum + (costs[c]![i]! < p ? 1 : 0), -1));
    const size = over.reduce((sum, o) => sum + o * o, 0);
    if (size === 0) break;
    const move = (step * (1.0001 * cost - value)) / size;
    prices = prices.map((p, i) => p - move * over[i]!);
  }
  return { columns, cost, bound: Math.min(bound, cost) };
}

/** Costs that differ by less, as a share, are the same but for rounding. */
const ENOUGH = 1e-9;

function costOf(costs: readonly Float64Array[], columns: readonly number[]): number {
  const rows = costs[0]?.length ?? 0;
  let sum = 0;
  for (let i = 0; i < rows; i++) {
    let least = Infinity;
    for (const c of columns) if (costs[c]![i]! < least) least = costs[c]![i]!;
    sum += least;
  }
  return sum;
}

/** What a column would save against the prices: 0 or less. */
function gainOf(column: Float64Array, prices: Float64Array): number {
  let gain = 0;
  for (let i = 0; i < prices.length; i++) if (column[i]! < prices[i]!) gain += column[i]! - prices[i]!;
  return gain;
}

/** Columns added one by one: first what serves the most rows, then what costs least. */
function added(costs: readonly Float64Array[], before: readonly number[], count: number): number[] {
  const columns = [...before];
  const rows = costs[0]?.length ?? 0;
  const now = Float64Array.from({ length: rows }, (_, i) => Math.min(Infinity, ...columns.map((c) => costs[c]![i]!)));
  while (columns.length < Math.min(count, costs.length)) {
    let best = -1;
    let least = [Infinity, Infinity] as const;
    costs.forEach((column, c) => {
      let unserved = 0;
      let sum = 0;
      for (let i = 0; i < rows; i++) {
        const each = Math.min(now[i]!, column[i]!);
        if (each === Infinity) unserved++;
        else sum += each;
      }
      if (unserved < least[0] || (unserved === least[0] && sum < least[1])) {
        best = c;
        least = [unserved, sum];
      }
    });
    columns.push(best);
    for (let i = 0; i < rows; i++) now[i] = Math.min(now[i]!, costs[best]![i]!);
  }
  return columns;
}

/** Exchanges one column for another as long as that costs less. */
function exchanged(costs: readonly Float64Array[], from: readonly number[]): number[] {
  const columns = [...from];
  let cost = costOf(costs, columns);
  for (let better = true; better;) {
    better = false;
    for (let k = 0; k < columns.length; k++) {
      const others = columns.filter((_, i) => i !== k);
      const rest = Float64Array.from({ length: costs[0]!.length }, (_, i) =>
        others.reduce((least, c) => Math.min(least, costs[c]![i]!), Infinity),
      );
      let best = columns[k]!;
      let least = cost;
      costs.forEach((column, c) => {
        let sum = 0;
        for (let i = 0; i < rest.length && sum < least; i++) sum += Math.min(rest[i]!, column[i]!);
        if (sum < least - ENOUGH * Math.max(1, Math.abs(sum))) {
          least = sum;
          best = c;
        }
      });
      if (best !== columns[k]) {
        columns[k] = best;
        cost = least;
        better = true;
      }
    }
  }
  return columns;
}

/** A choice that the bound suggests, improved, when it comes out better than what is known. */
function exchangeIfBetter(costs: readonly Float64Array[], columns: readonly number[], than: number) {
  const plain = costOf(costs, columns);
  if (!(plain < than * 1.02)) return undefined;
  const improved = exchanged(costs, columns);
  const cost = costOf(costs, improved);
  return cost < than ? { columns: improved, cost } : undefined;
}
