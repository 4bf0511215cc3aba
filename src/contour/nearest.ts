import type { Point } from './point.js';

/** The point of the straight line from `a` to `b` that is nearest to `p`, mm. */
export function nearestOn(a: Point, b: Point, p: Point): Point {
  const share = nearestShare(a, b, p);
  return [a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1])];
}

/** The square of the distance from `p` to the straight line from `a` to `b`, mm². */
export function squareTo(a: Point, b: Point, p: Point): number {
  const share = nearestShare(a, b, p);
  return (p[0] - a[0] - share * (b[0] - a[0])) ** 2 + (p[1] - a[1] - share * (b[1] - a[1])) ** 2;
}

/** Which share of the way from `a` to `b` leads to the place nearest to `p`; 0 where there is no way. */
function nearestShare(a: Point, b: Point, p: Point): number {
  const dx = b[0] - a[0];
  const dy = b[1] - a[1];
  const square = dx * dx + dy * dy;
  return square > 0 ? Math.min(1, Math.max(0, ((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / square)) : 0;
}
