import type { CostTable } from './costTable.js';

/** A choice of columns with as many as asked for: those given, and one by one what saves most. */
export function filledUp(table: CostTable, given: readonly number[], count: number): number[] {
  const chosen = [...given];
  const { near } = nearest(table, chosen);
  while (chosen.length < Math.min(count, table.columns)) {
    const gain = new Float64Array(table.columns);
    for (const c of chosen) gain[c] = -Infinity;
    table.rows.forEach(({ column, cost }, i) => {
      for (let at = 0; at < column.length && cost[at]! < near[i]!; at++) gain[column[at]!]! += near[i]! - cost[at]!;
    });
    const best = gain.reduce((a, each, c) => (each > gain[a]! ? c : a), 0);
    chosen.push(best);
    table.rows.forEach(({ column, cost }, i) => {
      const at = column.indexOf(best);
      if (at >= 0) near[i] = Math.min(near[i]!, cost[at]!);
    });
  }
  return chosen;
}

/**
 * Exchanges one column for another, always the two that save most, until none saves anything.
 * Source: M. G. C. Resende and R. F. Werneck, "A fast swap-based local search procedure for location problems", Annals
 * of Operations Research 150 (2007).
 *
 * @param least what is worth an exchange
 */
export function exchanged(table: CostTable, from: readonly number[], least: number): number[] {
  const chosen = [...from];
  const { columns, rows } = table;
  const gain = new Float64Array(columns);
  const loss = new Float64Array(chosen.length);
  // What is not lost of it after all, when another comes in its place.
  const kept = chosen.map(() => new Float64Array(columns));
  for (;;) {
    gain.fill(0);
    loss.fill(0);
    for (const each of kept) each.fill(0);
    const { near, next, by } = nearest(table, chosen);
    rows.forEach(({ column, cost }, i) => {
      const [first, second, k] = [near[i]!, next[i]!, by[i]!];
      if (k >= 0) loss[k]! += second - first;
      const keeps = kept[k];
      for (let at = 0; at < column.length && cost[at]! < second; at++) {
        const c = column[at]!;
        const costs = cost[at]!;
        if (costs < first) gain[c]! += first - costs;
        if (keeps) keeps[c]! += second - Math.max(costs, first);
      }
    });
    let most = least;
    let out = -1;
    let into = -1;
    kept.forEach((keeps, k) => {
      for (let c = 0; c < columns; c++) {
        const saves = gain[c]! + keeps[c]! - loss[k]!;
        if (saves <= most) continue;
        most = saves;
        out = k;
        into = c;
      }
    });
    if (out < 0) return chosen;
    chosen[out] = into;
  }
}

/**
 * Of each row the least and the next least cost among the chosen columns, and which of them has the least (−1: none).
 */
function nearest({ rows, columns, unserved }: CostTable, chosen: readonly number[]) {
  const place = new Int32Array(columns).fill(-1);
  chosen.forEach((c, k) => (place[c] = k));
  const near = new Float64Array(rows.length).fill(unserved);
  const next = new Float64Array(rows.length).fill(unserved);
  const by = new Int32Array(rows.length).fill(-1);
  rows.forEach(({ column, cost }, i) => {
    for (let at = 0; at < column.length; at++) {
      const k = place[column[at]!]!;
      if (k < 0) continue;
      if (by[i]! >= 0) {
        next[i] = cost[at]!;
        break;
      }
      near[i] = cost[at]!;
      by[i] = k;
    }
  });
  return { near, next, by };
}
