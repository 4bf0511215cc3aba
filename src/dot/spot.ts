import { inProfile } from '../wall/solid.js';

export type Pair = readonly [s: number, z: number];

/** Glue on a joint: a straight streak, rounded at its ends; a dot is one of no length. Joint's frame, mm. */
export interface Spot {
  /** `R2.3` a dot, `R2.s1` a smear. */
  readonly name: string;
  readonly joint: string;
  readonly from: Pair;
  readonly to: Pair;
  readonly radius: number;
}

/** How far a profile is from the middle line of a spot, mm, and whether the spot's beginning lies inside it. */
export function gapTo(
  profile: readonly Pair[],
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
function pointToEdge([s, z]: Pair, [s0, z0]: Pair, [s1, z1]: Pair): number {
  const ds = s1 - s0;
  const dz = z1 - z0;
  const along = ((s - s0) * ds + (z - z0) * dz) / (ds * ds + dz * dz || 1);
  const share = Math.min(1, Math.max(0, along));
  return (s - s0 - share * ds) ** 2 + (z - z0 - share * dz) ** 2;
}

function cross(a: Pair, b: Pair, c: Pair, d: Pair): boolean {
  const side = (p: Pair, q: Pair, r: Pair) => (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0]);
  return side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0;
}
