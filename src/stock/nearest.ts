import { noFound, pointToTriangle, type Found } from '../wall/closest.js';
import { LEAF, patchTreesOf, type PatchTree } from '../wall/patchTree.js';
import { PATCHES, type Mesh } from '../board/mesh.js';
import type { Board } from '../board/board.js';

/** A closed surface that is asked how deep within it points lie. */
export interface Depths {
  /**
   * How deep a point lies within the surface: its distance to the nearest place of it, mm, negative where it lies
   * outside. Writes the unit vector in which that depth falls into `toward`, and gives the triangle that place lies on,
   * by which a later question about a point near by is answered sooner.
   */
  depth(point: Float64Array, toward: Float64Array, near: number): number;
  /** The triangle of the last answer. */
  triangle(): number;
}

/**
 * Which side of the surface a point lies on is told by the normal at the nearest place, drawn between those at the
 * corners of its triangle (J. A. Bærentzen and H. Aanæs, "Signed distance computation using the angle weighted
 * pseudonormal", IEEE Transactions on Visualization and Computer Graphics 11, 2005).
 */
export function depthsOf({ mesh, vertexNormals }: Pick<Board, 'mesh' | 'vertexNormals'>): Depths {
  const trees = patchTreesOf(mesh);
  const search: Search = { found: noFound(), triangle: 0, corners: new Float64Array(9) };
  return {
    depth(point, toward, near) {
      search.found[0] = Infinity;
      take(search, mesh, near, point);
      for (const patch of PATCHES) searchTree(search, trees[patch], point);
      return signed(search, mesh, vertexNormals.normals, point, toward);
    },
    triangle: () => search.triangle,
  };
}

interface Search {
  readonly found: Found;
  triangle: number;
  readonly corners: Float64Array;
}

/** Nodes to be looked into, and the squared distances of their boxes. */
const NODES = new Int32Array(128);
const GAPS = new Float64Array(128);

function searchTree(search: Search, { mesh, order, leaves, boxes }: PatchTree, point: Float64Array): void {
  if (order.length === 0) return;
  let top = 0;
  NODES[top] = 1;
  GAPS[top++] = gapSquare(boxes, 1, point);
  while (top > 0) {
    const node = NODES[--top]!;
    if (GAPS[top]! >= search.found[0]!) continue;
    if (node >= leaves) {
      const first = (node - leaves) * LEAF;
      const end = Math.min(order.length, first + LEAF);
      for (let i = first; i < end; i++) take(search, mesh, order[i]!, point);
      continue;
    }
    const a = gapSquare(boxes, 2 * node, point);
    const b = gapSquare(boxes, 2 * node + 1, point);
    const nearer = a <= b ? 2 * node : 2 * node + 1;
    NODES[top] = nearer ^ 1;
    GAPS[top++] = Math.max(a, b);
    NODES[top] = nearer;
    GAPS[top++] = Math.min(a, b);
  }
}

function gapSquare(boxes: Float64Array, node: number, p: Float64Array): number {
  let sum = 0;
  for (let axis = 0, at = 6 * node; axis < 3; axis++, at++) {
    const below = boxes[at]! - p[axis]!;
    const over = p[axis]! - boxes[at + 3]!;
    const gap = below > 0 ? below : over > 0 ? over : 0;
    sum += gap * gap;
  }
  return sum;
}

function take(search: Search, mesh: Mesh, triangle: number, point: Float64Array): void {
  setCorners(search.corners, mesh, triangle);
  const before = search.found[0]!;
  pointToTriangle(point, 0, search.corners, search.found);
  if (search.found[0]! < before) search.triangle = triangle;
}

function setCorners(corners: Float64Array, { positions, triangles }: Mesh, triangle: number): void {
  for (let corner = 0; corner < 3; corner++) {
    const at = 3 * triangles[3 * triangle + corner]!;
    corners[3 * corner] = positions[at]!;
    corners[3 * corner + 1] = positions[at + 1]!;
    corners[3 * corner + 2] = positions[at + 2]!;
  }
}

/** A point nearer to the surface than this has no direction toward it of its own, mm. */
const ON_SURFACE = 1e-6;

function signed(
  { found, triangle, corners }: Search,
  mesh: Mesh,
  normals: Float64Array,
  point: Float64Array,
  toward: Float64Array,
): number {
  setCorners(corners, mesh, triangle);
  const [u, v, w] = sharesOf(corners, found);
  let nx = 0;
  let ny = 0;
  let nz = 0;
  for (const [corner, share] of [u, v, w].entries()) {
    const at = 3 * mesh.triangles[3 * triangle + corner]!;
    nx += share * normals[at]!;
    ny += share * normals[at + 1]!;
    nz += share * normals[at + 2]!;
  }
  const dx = found[4]! - point[0]!;
  const dy = found[5]! - point[1]!;
  const dz = found[6]! - point[2]!;
  const distance = Math.sqrt(found[0]!);
  const inside = dx * nx + dy * ny + dz * nz >= 0 ? 1 : -1;
  if (distance > ON_SURFACE) {
    toward[0] = (inside * dx) / distance;
    toward[1] = (inside * dy) / distance;
    toward[2] = (inside * dz) / distance;
  } else {
    const size = Math.hypot(nx, ny, nz) || 1;
    toward[0] = nx / size;
    toward[1] = ny / size;
    toward[2] = nz / size;
  }
  return inside * distance;
}

/** What each corner of a triangle counts for at the place found on it (barycentric coordinates). */
function sharesOf(c: Float64Array, found: Found): [number, number, number] {
  const ux = c[3]! - c[0]!;
  const uy = c[4]! - c[1]!;
  const uz = c[5]! - c[2]!;
  const vx = c[6]! - c[0]!;
  const vy = c[7]! - c[1]!;
  const vz = c[8]! - c[2]!;
  const wx = found[4]! - c[0]!;
  const wy = found[5]! - c[1]!;
  const wz = found[6]! - c[2]!;
  const uu = ux * ux + uy * uy + uz * uz;
  const uv = ux * vx + uy * vy + uz * vz;
  const vv = vx * vx + vy * vy + vz * vz;
  const wu = wx * ux + wy * uy + wz * uz;
  const wv = wx * vx + wy * vy + wz * vz;
  const all = uu * vv - uv * uv;
  if (all <= 0) return [1 / 3, 1 / 3, 1 / 3];
  const s = (vv * wu - uv * wv) / all;
  const t = (uu * wv - uv * wu) / all;
  return [1 - s - t, s, t];
}
