import type { Point } from './point.js';

/**
 * Whether a point lies in a polygon, either way around, whose edges do not cross; by the crossings of a ray. A point on
 * an edge may count either way.
 */
export function isInside(polygon: readonly Point[], x: number, y: number): boolean {
  let inside = false;
  // Asked in the proof's inner loop: nothing is made in it.
  for (let i = 0, j = polygon.length - 1; i < polygon.length; j = i++) {
    const xi = polygon[i]![0];
    const yi = polygon[i]![1];
    const xj = polygon[j]![0];
    const yj = polygon[j]![1];
    if (yi > y !== yj > y && x < ((xj - xi) * (y - yi)) / (yj - yi) + xi) inside = !inside;
  }
  return inside;
}
