import { arcBetween } from './arc.js';
import type { Vertex } from './vertex.js';

/** Length of a closed contour, arcs included, mm. */
export function perimeter(contour: readonly Vertex[]): number {
  return contour.reduce((sum, a, i) => {
    const b = contour[(i + 1) % contour.length]!;
    const arc = arcBetween(a, b);
    return sum + (arc ? arc.radius * Math.abs(arc.sweep) : Math.hypot(b.x - a.x, b.y - a.y));
  }, 0);
}
