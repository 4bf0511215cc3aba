import type { Point } from '../../contour/point.js';
import type { Stretch } from '../../chamber/stretch.js';
import type { Plan } from '../../plan.js';
import type { Shape } from '../drawing.js';
import { jointsInPlan } from '../../view/jointsInPlan.js';
import { outlineInPlan } from '../../view/outlineInPlan.js';
import { line, text } from '../primitives.js';

/**
 * The joints as they are left standing, within a stretch of the board: broken where chambers, or words, take their
 * place.
 *
 * @param taken closed convex outlines in which no joint is drawn
 */
export function jointLines({ board, layup }: Plan, stretch: Stretch, taken: readonly (readonly Point[])[]): Shape[] {
  return jointsInPlan(outlineInPlan(board, stretch), layup.joints, taken).map(({ from, to }) =>
    line('joint', from, to),
  );
}

/**
 * The joints' names beside where the stretch begins, at `x`; of joints too near to one another for their names the
 * first one's stands.
 */
export function jointNames({ board, layup }: Plan, { from }: Stretch, x: number, scale: number): Shape[] {
  let free = -Infinity;
  return layup.joints.flatMap(({ id, at, slope }): Shape[] => {
    const y = at + slope * from;
    const outline = board.surface.outlines[y < 0 ? 0 : 1];
    if (Math.abs(y) > outline.outer(from) || y - LETTERS * scale < free) return [];
    free = y + LETTERS * scale;
    return [text(id, [x, y], LETTERS * scale, 'right')];
  });
}

/** Height of a name on the paper, mm. */
const LETTERS = 2.5;
