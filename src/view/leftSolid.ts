import { slotsOf } from '../chamber/slots.js';
import type { Point } from '../contour/point.js';
import { toBoard } from '../layup/frame.js';
import type { Plan } from '../plan.js';

/** Where a place of a row was left solid: half the least depth of a chamber behind its face, board frame, mm. */
export function leftSolidInPlan({ layup, job, notes }: Pick<Plan, 'layup' | 'job' | 'notes'>) {
  return notes.flatMap(({ kind, where, row: id, place }): { readonly where: string; readonly at: Point }[] => {
    if (kind !== 'solid') return [];
    const row = layup.rows.find((each) => each.id === id);
    const slot = row && slotsOf(row, job.chambers, job.board.length).find((each) => each.place === place);
    if (!row || !slot) return [];
    const [x, y] = toBoard(row.face, slot.centre, 0, job.chambers.smallest.depth / 2);
    return [{ where, at: [x, y] }];
  });
}
