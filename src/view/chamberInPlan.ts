import type { Chamber } from '../chamber/chamber.js';
import { stretchOf } from '../chamber/stretch.js';
import type { Point } from '../contour/point.js';
import { toBoard } from '../layup/frame.js';
import type { Row } from '../layup/layup.js';
import { middleOf } from './middle.js';

/** A chamber seen from the deck, board frame, mm. */
export interface ChamberInPlan {
  readonly chamber: Chamber;
  /** The four corners of its length and depth. */
  readonly corners: readonly Point[];
  readonly middle: Point;
  /** How much room it has about its middle for words, along the board and across it. */
  readonly along: number;
  readonly across: number;
}

/** Every chamber as it lies in plan, in their order. */
export function chambersInPlan(rows: readonly Row[], chambers: readonly Chamber[]): ChamberInPlan[] {
  const rowOf = new Map(rows.map((row) => [row.id, row]));
  return chambers.map((chamber) => {
    const corners = cornersOf(chamber, rowOf.get(chamber.row)!);
    const middle = middleOf(corners);
    const reach = (axis: 0 | 1) => 2 * Math.min(...corners.map((corner) => Math.abs(corner[axis] - middle[axis])));
    return { chamber, corners, middle, along: reach(0), across: reach(1) };
  });
}

function cornersOf({ profile, depth: [near, far] }: Chamber, { face }: Row): Point[] {
  const { from, to } = stretchOf(profile);
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
