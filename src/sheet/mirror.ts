import type { Chamber } from '../chamber/chamber.js';
import type { Row } from '../layup/layup.js';
import type { Plan } from '../plan.js';

/** How far two faces may differ and still be marked from one sheet, mm: a tenth of a pencil line. */
const SAME = 0.05;

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
    const mirror = rows.find((other) => other.side === 'L' && areMirrored(plan, row, other));
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

/**
 * Whether two rows are the same seen in a mirror on the centreline: faces, glue, chambers, depths, and the board around
 * them.
 */
export function areMirrored(plan: Plan, a: Row, b: Row): boolean {
  if (plan.job.board.left) return false;
  const opposite = (u: readonly [number, number], v: readonly [number, number]) =>
    near(u[0], v[0]) && near(u[1], -v[1]);
  if (!opposite(a.face.origin, b.face.origin)) return false;
  if (!opposite(a.face.along, b.face.along) || !opposite(a.face.inward, b.face.inward)) return false;
  if (!sameGlue(plan, a, b)) return false;
  const those = chambersOf(plan, b);
  const these = chambersOf(plan, a);
  return these.length === those.length && these.every((chamber, i) => areAlike(chamber, those[i]!));
}

/** Whether the joints of both faces hold their glue at the same places. */
function sameGlue({ glue }: Plan, a: Row, b: Row): boolean {
  const spots = ({ face }: Row) => [
    ...glue.dots.filter(({ joint }) => joint === face.joint).map(({ s, z, diameter }) => [s, z, diameter]),
    ...glue.smears.filter(({ joint }) => joint === face.joint).map(({ from, to, width }) => [...from, ...to, width]),
  ];
  const those = spots(b);
  const these = spots(a);
  return (
    these.length === those.length &&
    these.every((spot, i) => spot.length === those[i]!.length && spot.every((value, k) => near(value, those[i]![k]!)))
  );
}

function areAlike(a: Chamber, b: Chamber): boolean {
  return (
    a.place === b.place &&
    near(a.depth[0], b.depth[0]) &&
    near(a.depth[1], b.depth[1]) &&
    a.contour.length === b.contour.length &&
    a.contour.every((v, i) => near(v.x, b.contour[i]!.x) && near(v.y, b.contour[i]!.y))
  );
}

function near(a: number, b: number): boolean {
  return Math.abs(a - b) <= SAME;
}
