import type { Point } from './point.js';

/** The point of the straight line from `a` to `b` that is nearest to `p`, mm. */
export function nearestOn([ax, ay]: Point, [bx, by]: Point, [px, py]: Point): Point {
  const dx = bx - ax;
  const dy = by - ay;
  const square = dx * dx + dy * dy;
  const share = square > 0 ? Math.min(1, Math.max(0, ((px - ax) * dx + (py - ay) * dy) / square)) : 0;
  return [ax + share * dx, ay + share * dy];
}
