import type { Chamber } from '../chamber/chamber.js';
import type { Row } from '../layup/layup.js';
import type { Plan } from '../plan.js';
import { areMirroredRows } from '../symmetry/pairs.js';

/** A row and, where there is one, the row on the other side that is its mirror image. */
export interface MirroredRow {
  readonly row: Row;
  readonly mirror?: Row;
  /** Whether it is seen at the far one of the two faces it is routed from. */
  readonly far?: boolean;
}

/**
 * The rows that need a sheet of their own, left to right: of two that mirror each other the right one, with the left
 * beside it.
 */
export function sheetRows(plan: Plan): MirroredRow[] {
  const { rows } = plan.layup;
  const pairs = new Map<Row, Row>();
  for (const row of rows) {
    if (row.side !== 'R') continue;
    const mirror = rows.find((other) => other.side === 'L' && areMirroredRows(plan, row, other));
    if (mirror) pairs.set(row, mirror);
  }
  const taken = new Set(pairs.values());
  return rows
    .filter((row) => !taken.has(row) && chambersOf(plan, row).length > 0)
    .map((row) => ({ row, ...(pairs.has(row) && { mirror: pairs.get(row)! }) }));
}

export function chambersOf(plan: Plan, row: Row): readonly Chamber[] {
  return plan.chambers.filter((chamber) => chamber.row === row.id);
}
