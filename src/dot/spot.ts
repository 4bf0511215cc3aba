import { doCross } from '../contour/crossing.js';
import { isInside } from '../contour/inside.js';
import { squareTo } from '../contour/nearest.js';
import type { Point } from '../contour/point.js';

/** Glue on a joint: a straight streak, rounded at its ends; a dot is one of no length. Joint's frame, mm. */
export interface Spot {
  /** `DR2.3` a dot, `SR2.1` a smear. */
  readonly name: string;
  readonly joint: string;
  readonly from: Point;
  readonly to: Point;
  readonly radius: number;
}

/** A dot on a joint, and its proved distance to the finished surface, mm: no more than there is. */
export interface DotSpot extends Spot {
  readonly margin: number;
}

/** How far a profile is from the middle line of a spot, mm, and whether the spot's beginning lies inside it. */
export function gapTo(
  profile: readonly Point[],
  { from, to }: Pick<Spot, 'from' | 'to'>,
): { gap: number; inside: boolean } {
  let square = Infinity;
  profile.forEach((a, i) => {
    const b = profile[(i + 1) % profile.length]!;
    square = Math.min(
      square,
      squareTo(a, b, from),
      squareTo(a, b, to),
      squareTo(from, to, a),
      doCross(a, b, from, to) ? 0 : Infinity,
    );
  });
  return { gap: Math.sqrt(square), inside: isInside(profile, from[0], from[1]) };
}
