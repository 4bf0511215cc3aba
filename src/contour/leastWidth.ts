import { hullOf } from './hull.js';
import type { Point } from './point.js';

/** The narrowest straight strip that holds points: its width, mm, and the direction it runs in, radians from `x`. */
export interface LeastWidth {
  readonly width: number;
  readonly angle: number;
}

/**
 * The least width over all directions: that of a strip flush with an edge of the convex hull, with the point across
 * from it found by rotating calipers.
 * Source: M. E. Houle and G. T. Toussaint, "Computing the width of a set", IEEE Transactions on Pattern Analysis and
 * Machine Intelligence 10 (1988), 761–765.
 */
export function leastWidth(points: readonly Point[]): LeastWidth {
  const hull = hullOf(points);
  const count = hull.length;
  let best: LeastWidth = { width: Infinity, angle: 0 };
  let across = 1;
  for (let i = 0; i < count; i++) {
    const [ax, ay] = hull[i]!;
    const [bx, by] = hull[(i + 1) % count]!;
    const length = Math.hypot(bx - ax, by - ay);
    const out = ([x, y]: Point) => ((bx - ax) * (y - ay) - (by - ay) * (x - ax)) / length;
    while (out(hull[(across + 1) % count]!) > out(hull[across % count]!)) across++;
    const width = out(hull[across % count]!);
    // Of the two ways along a strip the one that runs from nose to tail.
    const angle = bx > ax ? Math.atan2(by - ay, bx - ax) : Math.atan2(ay - by, ax - bx);
    if (width < best.width) best = { width, angle };
  }
  return best;
}
