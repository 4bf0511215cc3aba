import type { Point } from '../contour/point.js';
import type { Chamber } from '../chamber/chamber.js';
import { stretchOf } from '../chamber/stretch.js';
import { toBoard } from '../layup/frame.js';
import type { Row } from '../layup/layup.js';

/** A chamber seen from the deck: the four corners of its length and depth, board frame, mm. */
export function chamberInPlan(chamber: Pick<Chamber, 'profile' | 'depth'>, { face }: Pick<Row, 'face'>): Point[] {
  const { from, to } = stretchOf(chamber.profile);
  const [near, far] = chamber.depth;
  return [
    [from, near],
    [to, near],
    [to, far],
    [from, far],
  ].map(([at, deep]): Point => {
    const [x, y] = toBoard(face, at!, 0, deep!);
    return [x, y];
  });
}

/** The middle of a chamber in plan, and how much room it has for words along and across the board, mm. */
export function roomInPlan(corners: readonly Point[]): { middle: Point; width: number; height: number } {
  const mean = (axis: 0 | 1) => corners.reduce((sum, corner) => sum + corner[axis], 0) / corners.length;
  const middle: Point = [mean(0), mean(1)];
  const reach = (axis: 0 | 1) => 2 * Math.min(...corners.map((corner) => Math.abs(corner[axis] - middle[axis])));
  return { middle, width: reach(0), height: reach(1) };
}
