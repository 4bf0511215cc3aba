import type { Point } from '../contour/point.js';
import { inProfile } from '../wall/solid.js';

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
      pointToEdge(from, a, b),
      pointToEdge(to, a, b),
      pointToEdge(a, from, to),
      cross(a, b, from, to) ? 0 : Infinity,
    );
  });
  return { gap: Math.sqrt(square), inside: inProfile(profile, from[0], from[1]) };
}

/** Squared distance of a point from the straight line between two others. */
function pointToEdge(p: Point, a: Point, b: Point): number {
  const ds = b[0] - a[0];
  const dz = b[1] - a[1];
  const s = p[0] - a[0];
  const z = p[1] - a[1];
  const along = (s * ds + z * dz) / (ds * ds + dz * dz || 1);
  const share = Math.min(1, Math.max(0, along));
  return (s - share * ds) ** 2 + (z - share * dz) ** 2;
}

function cross(a: Point, b: Point, c: Point, d: Point): boolean {
  const side = (p: Point, q: Point, r: Point) => (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0]);
  return side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0;
}
