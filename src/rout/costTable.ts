/**
 * What each column costs each row, as choosing asks for it: of every row only the columns that can serve it, the
 * cheapest first. Whoever takes from the front has seen all that matters when the next one costs too much.
 */
export interface CostTable {
  readonly columns: number;
  /** Of each row, the columns that serve it by rising cost, and that cost. */
  readonly rows: readonly { readonly column: Int32Array; readonly cost: Float64Array }[];
  /** What a row counts that nothing serves: more than all others together. */
  readonly unserved: number;
}

/** @param costs one array of row costs a column; infinite where the column does not serve the row */
export function costTableOf(costs: readonly Float64Array[]): CostTable {
  const rows = Array.from({ length: costs[0]?.length ?? 0 }, (_, i) => {
    const serving = costs.flatMap((column, c) => (Number.isFinite(column[i]!) ? [c] : []));
    serving.sort((a, b) => costs[a]![i]! - costs[b]![i]!);
    return { column: Int32Array.from(serving), cost: Float64Array.from(serving, (c) => costs[c]![i]!) };
  });
  const most = rows.reduce((sum, { cost }) => sum + (cost[cost.length - 1] ?? 0), 0);
  return { columns: costs.length, rows, unserved: FAR * Math.max(1, most) };
}

/** How much more than all others together a row counts that nothing serves. */
const FAR = 10;

/** What each row pays for the cheapest of the chosen columns; infinite where none of them serves it. */
export function costsWith({ rows, columns }: CostTable, chosen: readonly number[]): Float64Array {
  const isChosen = new Uint8Array(columns);
  for (const c of chosen) isChosen[c] = 1;
  return Float64Array.from(rows, ({ column, cost }) => {
    let at = 0;
    while (at < column.length && isChosen[column[at]!] === 0) at++;
    return cost[at] ?? Infinity;
  });
}

/** The sum of what all rows pay. */
export function costOf(table: CostTable, chosen: readonly number[]): number {
  return costsWith(table, chosen).reduce((sum, each) => sum + each, 0);
}

/** The least any choice can cost, however many columns it takes. */
export function leastCost({ rows }: CostTable): number {
  return rows.reduce((sum, { cost }) => sum + (cost[0] ?? Infinity), 0);
}
