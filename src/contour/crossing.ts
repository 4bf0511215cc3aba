import type { Point } from './point.js';

/**
 * Whether the straight line from `a` to `b` passes through the one from `c` to `d`; an end that only touches does not
 * count.
 */
export function doCross(a: Point, b: Point, c: Point, d: Point): boolean {
  return side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0;
}

/** Above 0 where `p` lies to the left of the way from `from` to `to`. */
function side(from: Point, to: Point, p: Point): number {
  return (to[0] - from[0]) * (p[1] - from[1]) - (to[1] - from[1]) * (p[0] - from[0]);
}
