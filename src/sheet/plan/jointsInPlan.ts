import type { Point } from '../../contour/point.js';
import type { Board } from '../../board/board.js';
import { without, type Stretch } from '../../chamber/stretch.js';
import type { Joint } from '../../layup/layup.js';
import type { Plan } from '../../plan.js';
import type { Shape } from '../drawing.js';
import { line, text } from '../primitives.js';

/**
 * A joint along the edge of a chamber is the chamber's own line; one that runs deeper in than this is routed away, mm.
 */
const EDGE = 0.5;

/**
 * The joints as they are left standing, within a stretch of the board: broken where chambers, or words, take their
 * place.
 *
 * @param taken closed convex outlines in which no joint is drawn
 */
export function jointsInPlan(plan: Plan, stretch: Stretch, taken: readonly (readonly Point[])[]): Shape[] {
  return plan.layup.joints.flatMap((joint): Shape[] => {
    const whole = withinBoard(plan.board, joint, stretch);
    if (!whole) return [];
    const y = (x: number) => joint.at + joint.slope * x;
    const gaps = taken.flatMap((outline) => within(outline, joint) ?? []);
    const parts = without(whole, gaps).map(({ from, to }) => line('joint', [from, y(from)], [to, y(to)]));
    return parts;
  });
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

/** From where to where a joint lies within the board. */
function withinBoard({ surface, grid }: Board, joint: Joint, { from, to }: Stretch): Stretch | undefined {
  const inside = (x: number) => {
    const y = joint.at + joint.slope * x;
    const outline = surface.outlines[y < 0 ? 0 : 1];
    return Math.abs(y) <= outline.outer(x) && Math.abs(y) >= outline.inner(x);
  };
  const xs = [from, ...Array.from(grid.xs).filter((x) => x > from && x < to), to].filter(inside);
  const [first, last] = [xs[0], xs[xs.length - 1]];
  return first === undefined || last === undefined || first === last ? undefined : { from: first, to: last };
}

/** From where to where a joint runs inside a closed outline, deeper than its edge; undefined where it passes it by. */
function within(outline: readonly Point[], { at, slope }: Joint): Stretch | undefined {
  const over = outline.map(([x, y]) => y - at - slope * x);
  if (Math.min(...over) > -EDGE || Math.max(...over) < EDGE) return undefined;
  const crossings = outline.flatMap(([x], i): number[] => {
    const j = (i + 1) % outline.length;
    if (over[i]! > 0 === over[j]! > 0) return [];
    return [x + (over[i]! / (over[i]! - over[j]!)) * (outline[j]![0] - x)];
  });
  return crossings.length < 2 ? undefined : { from: Math.min(...crossings), to: Math.max(...crossings) };
}
