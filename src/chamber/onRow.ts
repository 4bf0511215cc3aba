import { toBoard, toFace } from '../layup/frame.js';
import type { Face, Layup, Row } from '../layup/layup.js';
import type { Blocked, RowObstacle } from './obstacle.js';

/** How a row meets a joint: at the face it is routed from, or at the one it is routed through to. */
export interface JointOnRow {
  readonly row: Row;
  /** The row's face at the joint; its `s` and `z` are the joint's. */
  readonly face: Face;
  readonly near: boolean;
}

/** The rows whose chambers may be open to a joint, left to right; at most one on either side. */
export function rowsAt(layup: Layup, joint: string): JointOnRow[] {
  return layup.rows.flatMap((row): JointOnRow[] => {
    if (row.face.joint === joint) return [{ row, face: row.face, near: true }];
    return row.through?.joint === joint ? [{ row, face: row.through, near: false }] : [];
  });
}

/**
 * A place on the joint in the frame of the row's own face: the same `s` at the near face, square across to the far one.
 */
export function acrossRow({ row, face, near }: JointOnRow, s: number): { s: number; t: number } {
  if (near) return { s, t: 0 };
  const [x, y] = toBoard(face, s, 0, 0);
  const [across, t] = toFace(row.face, x, y);
  return { s: across, t };
}

/** What a cutter leaves before a face is no wall when it is thinner than this, mm: the chamber counts as open there. */
const NO_WALL = 1;

/**
 * The depth beyond which a chamber of the row is open to the joint, or comes nearer to it than `off`, somewhere between
 * two places along it.
 */
export function openBeyond(at: JointOnRow, from: number, to: number, off = NO_WALL): number {
  return at.near ? -Infinity : Math.min(acrossRow(at, from).t, acrossRow(at, to).t) - Math.max(off, NO_WALL);
}

/**
 * Whether a chamber that goes so deep comes out at the joint over a stretch along it, so that its cutter takes away
 * what is glued there.
 */
export function isOpenAt(at: JointOnRow, deep: number, from: number, to: number): boolean {
  return at.near || deep >= Math.max(acrossRow(at, from).t, acrossRow(at, to).t);
}

/** A rectangle on a joint, `s` and `z` of its faces, as an obstacle to every row that may be open to it. */
export function boxOnRows(
  layup: Layup,
  joint: string,
  box: Blocked,
  name: string,
  why: RowObstacle['why'],
): RowObstacle[] {
  return rowsAt(layup, joint).map((at): RowObstacle => {
    const ends = [acrossRow(at, box.from), acrossRow(at, box.to)];
    const [from, to] = [Math.min(ends[0]!.s, ends[1]!.s), Math.max(ends[0]!.s, ends[1]!.s)];
    const beyond = openBeyond(at, box.from, box.to);
    return { on: 'row', row: at.row.id, why, name, blocked: { ...box, from, to }, beyond };
  });
}
