import type { Point } from '../../contour/point.js';
import { slotsOf } from '../../chamber/slots.js';
import { stretchOf } from '../../chamber/stretch.js';
import { toBoard } from '../../layup/frame.js';
import type { Shown } from '../plan/answer.js';
import type { Result } from '../../result.js';

/** A chamber as it lies in plan, board frame, mm. */
export interface ChamberInPlan {
  readonly chamber: Result['chambers'][number];
  readonly outline: readonly Point[];
  readonly middle: readonly [number, number];
  /** Along the board and across it. */
  readonly long: number;
  readonly wide: number;
}

/** Every chamber's greatest outline in plan: its length along the face by its depth into the piece. */
export function chambersInPlan({ chambers, rows }: Result): ChamberInPlan[] {
  const faces = new Map(rows.map(({ id, face }) => [id, { ...face, piece: '' }]));
  return chambers.map((chamber) => {
    const face = faces.get(chamber.row)!;
    const { from, to } = stretchOf(chamber.profile);
    const [near, far] = chamber.depth;
    const corner = (at: number, t: number) => toBoard(face, at, 0, t).slice(0, 2) as [number, number];
    const outline = [corner(from, near), corner(to, near), corner(to, far), corner(from, far)];
    return { chamber, outline, middle: corner((from + to) / 2, (near + far) / 2), long: to - from, wide: far - near };
  });
}

/** Where a place of a row was left solid, on the middle of its first member. */
export function solidPlaces({ result, layup, job }: Shown): { where: string; at: [number, number] }[] {
  return result.notes.flatMap(({ kind, where, row: id, place }) => {
    if (kind !== 'solid') return [];
    const row = layup.rows.find((each) => each.id === id);
    const slot = row && slotsOf(row, job.chambers, result.board.length).find((each) => each.place === place);
    if (!row || !slot) return [];
    const [x, y] = toBoard(row.face, slot.centre, 0, job.chambers.smallest.depth / 2);
    return [{ where, at: [x, y] as [number, number] }];
  });
}
