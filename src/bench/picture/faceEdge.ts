import type { Grid } from '../../board/grid.js';
import { toFace } from '../../layup/frame.js';
import type { Face, Joint } from '../../layup/layup.js';

/**
 * Where the finished surface ends a face, at each of the grid's rows that the joint passes through: `s` and the two
 * heights, mm.
 */
export interface FaceEdge {
  readonly s: number;
  readonly bottom: number;
  readonly deck: number;
}

/** The deck and bottom line of a face, nose to tail. */
export function faceEdges(grid: Grid, face: Face, joint: Joint): FaceEdge[] {
  const { xs, rows, columns, apex, positions } = grid;
  const edges: FaceEdge[] = [];
  for (let row = 0; row < rows; row++) {
    const x = xs[row]!;
    const y = joint.at + joint.slope * x;
    const first = (row * 2 + (y < 0 ? 0 : 1)) * columns;
    const bottom = heightAt(positions, first, first + apex, Math.abs(y));
    const deck = heightAt(positions, first + columns - 1, first + apex, Math.abs(y));
    if (bottom !== undefined && deck !== undefined) edges.push({ s: toFace(face, x, y)[0], bottom, deck });
  }
  return edges;
}

/**
 * Height of a chain from the centreline outward where it is `half` mm from the centreline; nothing where it does not
 * reach so far.
 */
function heightAt(p: Float64Array, from: number, to: number, half: number): number | undefined {
  const step = from < to ? 1 : -1;
  for (let i = from; i !== to; i += step) {
    const a = Math.abs(p[3 * i + 1]!);
    const b = Math.abs(p[3 * (i + step) + 1]!);
    if (half < a || half > b) continue;
    return p[3 * i + 2]! + (b > a ? (half - a) / (b - a) : 0) * (p[3 * (i + step) + 2]! - p[3 * i + 2]!);
  }
  return undefined;
}
