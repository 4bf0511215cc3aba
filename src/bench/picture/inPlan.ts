import type { Point } from '../../contour/point.js';
import { slotsOf } from '../../chamber/slots.js';
import { stretchOf } from '../../chamber/stretch.js';
import { toBoard } from '../../layup/frame.js';
import { chamberInPlan, roomInPlan } from '../../view/chamberInPlan.js';
import type { Shown } from '../plan/answer.js';
import type { Result } from '../../result.js';

/** A chamber as it lies in plan, board frame, mm. */
export interface ChamberInPlan {
  readonly chamber: Result['chambers'][number];
  readonly outline: readonly Point[];
  readonly middle: Point;
  /** Along the board and across it. */
  readonly long: number;
  readonly wide: number;
}

/** Every chamber of the plan that is shown, as it lies in plan. */
export function chambersInPlan({ chambers, rows }: Result): ChamberInPlan[] {
  const byId = new Map(rows.map((row) => [row.id, { face: { ...row.face, piece: '' } }]));
  return chambers.map((chamber) => {
    const outline = chamberInPlan(chamber, byId.get(chamber.row)!);
    const { from, to } = stretchOf(chamber.profile);
    const [near, far] = chamber.depth;
    return { chamber, outline, middle: roomInPlan(outline).middle, long: to - from, wide: far - near };
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
