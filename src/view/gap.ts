import type { Point } from '../contour/point.js';
import { nearestOn } from '../contour/nearest.js';

/** The nearest two points of two figures in a plane, mm. */
export interface Gap {
  readonly distance: number;
  readonly from: Point;
  readonly to: Point;
}

/**
 * The smallest gap between a closed outline and straight stretches beside it; undefined without stretches. Corners
 * against sides, both ways.
 */
export function nearestGap(
  outline: readonly Point[],
  stretches: readonly (readonly [Point, Point])[],
): Gap | undefined {
  let best: Gap | undefined;
  const keep = (from: Point, to: Point) => {
    const distance = Math.hypot(to[0] - from[0], to[1] - from[1]);
    if (distance < (best?.distance ?? Infinity)) best = { distance, from, to };
  };
  outline.forEach((corner, i) => {
    const next = outline[(i + 1) % outline.length]!;
    for (const [a, b] of stretches) {
      keep(corner, nearestOn(a, b, corner));
      keep(nearestOn(corner, next, a), a);
      keep(nearestOn(corner, next, b), b);
    }
  });
  return best;
}
