import { outlineOf } from '../chamber/keepOut.js';
import type { Point } from '../contour/point.js';
import type { KeepOutSpec } from '../job/job.js';
import { middleOf } from './middle.js';

/** A keep-out seen from the deck, board frame, mm. */
export type KeepOutInPlan = {
  readonly middle: Point;
  /** How far it reaches from its middle, along the board and across it. */
  readonly halfSize: Point;
} & (
  { readonly kind: 'disc'; readonly radius: number } | { readonly kind: 'outline'; readonly corners: readonly Point[] }
);

export function keepOutInPlan(keepOut: KeepOutSpec): KeepOutInPlan {
  if (keepOut.kind === 'disc') {
    const { x, y, radius } = keepOut;
    return { kind: 'disc', middle: [x, y], halfSize: [radius, radius], radius };
  }
  const corners = outlineOf(keepOut);
  const middle: Point = keepOut.kind === 'polygon' ? middleOf(corners) : [keepOut.x, keepOut.y];
  const reach = (axis: 0 | 1) => Math.max(...corners.map((corner) => Math.abs(corner[axis] - middle[axis])));
  return { kind: 'outline', middle, halfSize: [reach(0), reach(1)], corners };
}
