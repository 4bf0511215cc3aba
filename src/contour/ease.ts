import type { Point } from './point.js';
import type { Vertex } from './vertex.js';

/**
 * A corner that turns by less than this needs no easing: the cutter leaves it as it is but for a few thousandths of a
 * millimetre.
 */
const SOFT_TURN = (10 * Math.PI) / 180;
/**
 * Straight lines that stand for one eased corner in the proof; they hold the arc inside, off it by at most
 * `radius / cos(11.25°) − radius`.
 */
const FACETS = 4;

/**
 * Eases the corners of a counter-clockwise polygon to a cutter's radius, mm: the contour the cutter leaves, with true
 * arcs, and a polygon of straight lines around it. Corners that turn by less than `softTurn`, radians, stay as they
 * are. `undefined` when an edge is too short for its corners, so that the cutter does not fit.
 */
export function easeCorners(
  corners: readonly Point[],
  radius: number,
  softTurn = SOFT_TURN,
): { contour: Vertex[]; profile: Point[] } | undefined {
  const n = corners.length;
  const contour: Vertex[] = [];
  const profile: Point[] = [];
  const edges = corners.map(([x, y], i) => edgeFrom(x, y, corners[(i + 1) % n]!));
  const taken = edges.map(() => 0);
  for (let i = 0; i < n; i++) {
    const [x, y] = corners[i]!;
    const before = edges[(i + n - 1) % n]!;
    const after = edges[i]!;
    const turn = Math.atan2(before.ux * after.uy - before.uy * after.ux, before.ux * after.ux + before.uy * after.uy);
    if (turn < softTurn) {
      contour.push({ x, y });
      profile.push([x, y]);
      continue;
    }
    const tangent = radius * Math.tan(turn / 2);
    taken[(i + n - 1) % n]! += tangent;
    taken[i]! += tangent;
    contour.push(
      { x: x - tangent * before.ux, y: y - tangent * before.uy, bulge: Math.tan(turn / 4) },
      { x: x + tangent * after.ux, y: y + tangent * after.uy },
    );
    // Centre to the left of the edge that comes in.
    const cx = x - tangent * before.ux - radius * before.uy;
    const cy = y - tangent * before.uy + radius * before.ux;
    const far = radius / Math.cos(turn / FACETS / 2);
    const start = Math.atan2(-before.ux, before.uy);
    for (let k = 0; k < FACETS; k++) {
      const angle = start + (turn * (k + 0.5)) / FACETS;
      profile.push([cx + far * Math.cos(angle), cy + far * Math.sin(angle)]);
    }
  }
  if (edges.some(({ length }, i) => taken[i]! > length + 1e-9)) return undefined;
  return { contour, profile };
}

/** Unit direction and length of the edge between two corners. */
function edgeFrom(x: number, y: number, [toX, toY]: Point) {
  const length = Math.sqrt((toX - x) ** 2 + (toY - y) ** 2);
  return { ux: (toX - x) / length, uy: (toY - y) / length, length };
}
