import { easeCorners } from '../chamber/contour.js';
import type { BlocksSpec } from '../job/spec/blocks.js';
import type { Vertex } from '../contour/vertex.js';
import { sharpCorners } from '../rout/opening.js';

/** How a block's outline is made from its chamber's. */
export interface Fit extends Pick<BlocksSpec, 'fit' | 'corners'> {
  /** mm; what the chamber's corners are eased to. */
  readonly cutterRadius: number;
}

/**
 * The outline a block is cut to: its chamber's contour with every edge moved out by the fit, in where it is negative,
 * its corners eased alongside or left square. Frame of the contour, counter-clockwise, mm.
 * @throws where the clearance leaves nothing; a job that asks for so much is refused when it is read
 */
export function fitted(chamber: readonly Vertex[], { fit, corners, cutterRadius }: Fit): readonly Vertex[] {
  if (fit === 0 && corners === 'eased') return chamber;
  const moved = movedEdges(sharpCorners(chamber), fit);
  const radius = corners === 'eased' ? cutterRadius + fit : 0;
  const eased = radius > 0 ? easeCorners(moved, radius) : undefined;
  // Corners too short for the arc stay sharp: more is left to sand, never too little.
  return eased?.contour ?? moved.map(([x, y]) => ({ x, y }));
}

type Pair = readonly [number, number];

interface Edge {
  readonly at: Pair;
  readonly along: Pair;
}

/** A counter-clockwise polygon with every edge moved outward; edges that vanish on the way inward are left out. */
function movedEdges(corners: readonly Pair[], by: number): Pair[] {
  let edges = corners.map(([x, y], i): Edge => {
    const [x1, y1] = corners[(i + 1) % corners.length]!;
    const length = Math.hypot(x1 - x, y1 - y);
    const along: Pair = [(x1 - x) / length, (y1 - y) / length];
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
  throw new Error(`a clearance of ${-by} mm leaves nothing of a block`);
}

/** Edges whose directions differ by less, as a sine, are one straight line. */
const STRAIGHT = 1e-9;

/** Where two edges' lines meet. */
function meeting(before: Edge, edge: Edge): Pair {
  const cross = before.along[0] * edge.along[1] - before.along[1] * edge.along[0];
  if (Math.abs(cross) < STRAIGHT) return edge.at;
  const [dx, dy] = [edge.at[0] - before.at[0], edge.at[1] - before.at[1]];
  const share = (dx * edge.along[1] - dy * edge.along[0]) / cross;
  return [before.at[0] + share * before.along[0], before.at[1] + share * before.along[1]];
}
