import type { Point } from './point.js';
import type { Vertex } from './vertex.js';

/**
 * The corners of a counter-clockwise contour as they would be without easing: where the straight edges beside each arc
 * meet.
 */
export function sharpCorners(contour: readonly Vertex[]): Point[] {
  const corners: Point[] = [];
  contour.forEach(({ x, y, bulge }, i) => {
    const next = contour[(i + 1) % contour.length]!;
    const before = contour[(i + contour.length - 1) % contour.length]!;
    if (bulge) {
      // The tangents at both ends of an arc meet over the middle of its chord, by tan of half of its turn.
      const rise = Math.tan(2 * Math.atan(bulge)) / 2;
      corners.push([(x + next.x) / 2 + rise * (next.y - y), (y + next.y) / 2 - rise * (next.x - x)]);
    } else if (!before.bulge) corners.push([x, y]);
  });
  return corners;
}
