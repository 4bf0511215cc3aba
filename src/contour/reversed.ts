import type { Vertex } from './vertex.js';

/**
 * The same contour run backward; the bulge after a vertex belongs, backward, to the one that was next, and mirroring
 * turned it already.
 */
export function reversed(vertices: readonly Vertex[]): Vertex[] {
  const n = vertices.length;
  return Array.from({ length: n }, (_, i) => {
    const { x, y } = vertices[n - 1 - i]!;
    const bulge = vertices[(2 * n - 2 - i) % n]!.bulge;
    return bulge === undefined ? { x, y } : { x, y, bulge };
  });
}
