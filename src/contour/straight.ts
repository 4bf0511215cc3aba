import type { Point } from './point.js';
import type { Vertex } from './vertex.js';

/** A polygon as a contour without arcs, in the same order, mm. */
export function straight(polygon: readonly Point[]): Vertex[] {
  return polygon.map(([x, y]) => ({ x, y }));
}
