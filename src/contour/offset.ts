import type { Point } from './point.js';

/**
 * A counter-clockwise polygon with every edge moved outward by so much, inward where it is negative, mm: its corners
 * stay sharp, and edges that vanish on the way inward are left out.
 * @throws where the way inward leaves nothing
 */
export function movedEdges(corners: readonly Point[], by: number): Point[] {
  let edges = corners.map(([x, y], i): Edge => {
    const [x1, y1] = corners[(i + 1) % corners.length]!;
    const length = Math.hypot(x1 - x, y1 - y);
    const along: Point = [(x1 - x) / length, (y1 - y) / length];
    return { at: [x + by * along[1], y - by * along[0]], along };
  });
  while (edges.length > 2) {
    const met = edges.map((edge, i) => meeting(edges[(i + edges.length - 1) % edges.length]!, edge));
    const kept = edges.filter(({ along }, i) => {
      const [from, to] = [met[i]!, met[(i + 1) % met.length]!];
      return (to[0] - from[0]) * along[0] + (to[1] - from[1]) * along[1] > 0;
    });
    if (kept.length === edges.length) return met;
    edges = kept;
  }
  throw new Error(`an offset of ${by} mm leaves nothing of an outline`);
}

/** Edges whose directions differ by less, as a sine, are one straight line. */
const STRAIGHT = 1e-9;

/** Where two edges' lines meet. */
function meeting(before: Edge, edge: Edge): Point {
  const cross = before.along[0] * edge.along[1] - before.along[1] * edge.along[0];
  if (Math.abs(cross) < STRAIGHT) return edge.at;
  const [dx, dy] = [edge.at[0] - before.at[0], edge.at[1] - before.at[1]];
  const share = (dx * edge.along[1] - dy * edge.along[0]) / cross;
  return [before.at[0] + share * before.along[0], before.at[1] + share * before.along[1]];
}

interface Edge {
  readonly at: Point;
  readonly along: Point;
}
