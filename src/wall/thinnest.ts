import type { Mesh } from '../board/mesh.js';
import { isInside } from '../contour/inside.js';
import {
  cornersToTriangle,
  crossTriangle,
  edgesToTriangle,
  FIRST,
  FLAT,
  noFound,
  NORMAL,
  pointToFlat,
  SECOND,
  type Flats,
  type Found,
} from './closest.js';
import { LEAF, type PatchTree } from './patchTree.js';
import { GROUP, type Solid } from './solid.js';

/** The thinnest place between a chamber and a part of the surface. */
export interface Thinnest {
  /**
   * The distance on the mesh, mm, exact but for rounding. 0 where they meet, negative where the chamber lies outside.
   */
  readonly distance: number;
  /** Where it is on the surface and on the chamber, board frame. */
  readonly onSurface: BoardPoint;
  readonly onChamber: BoardPoint;
}

export type BoardPoint = readonly [x: number, y: number, z: number];

/** Gaps that differ by less, mm, are the same: what is looked at first must not hang on the last bits of a machine. */
const TIE = 1e-9;
/**
 * How much further than expected may be looked, mm: more than rounding and ties come to, so that the same place is
 * found as without it.
 */
const BEYOND_EXPECTED = 1e-6;
/** Nodes still to be visited, and the squares of their gaps; a walk keeps one a level. */
const stack = new Int32Array(64);
const gaps = new Float64Array(64);
/** The nine corner numbers of the triangle being looked at. */
const corners = new Float64Array(9);

/**
 * The smallest distance between a chamber's solid and a patch, or several, by branch and bound over the patches' trees.
 *
 * A pair of flat and triangle is bounded from below by their boxes and by the two planes (the triangle's against the
 * flat's corners, the flat's against the triangle's); only pairs whose bound lies under the best found are measured
 * exactly. Empty patches are infinitely far.
 *
 * @param expected that the solid is no further than this, mm: nothing beyond is looked at. It changes nothing but the
 *   time it takes, also where
 *   it is wrong.
 */
export function thinnest(solid: Solid, trees: readonly PatchTree[], expected = Infinity): Thinnest {
  let search = searched(solid, trees, Math.max(0, expected) + BEYOND_EXPECTED);
  // What is nearest lies further away than expected.
  if (search.found[0]! > search.limitSquare) search = searched(solid, trees, Infinity);
  const { found, nearest } = search;
  if (nearest < 0) return { distance: Infinity, onSurface: [NaN, NaN, NaN], onChamber: [NaN, NaN, NaN] };
  const distance = Math.sqrt(found[0]!);
  return {
    distance: liesInside(found, trees[0]!.mesh, nearest) ? distance : -distance,
    onSurface: [found[4]!, found[5]!, found[6]!],
    onChamber: [found[1]!, found[2]!, found[3]!],
  };
}

/** How far a point is from the outside of a solid, mm. */
export function distanceTo(solid: Solid, point: BoardPoint): number {
  const found = noFound();
  corners.set(point);
  for (let at = 0; at < solid.flats.length; at += FLAT) pointToFlat(solid.flats, at, corners, 0, found);
  for (let end = 0; end < 2; end++) pointToEnd(solid, end, corners, 0, found);
  return Math.sqrt(found[0]!);
}

/** How far a search has come. */
interface Search {
  readonly found: Found;
  /** The triangle that `found` lies on, and the unit direction from the chamber to it. */
  nearest: number;
  readonly towards: Float64Array;
  /** What is as far as this need not be looked at, mm, and its square. */
  limit: number;
  limitSquare: number;
}

function searched(solid: Solid, trees: readonly PatchTree[], limit: number): Search {
  const search = { found: noFound(), nearest: -1, towards: new Float64Array(3), limit, limitSquare: limit * limit };
  for (const tree of trees) if (tree.order.length > 0) searchTree(search, solid, tree);
  return search;
}

function searchTree(search: Search, solid: Solid, tree: PatchTree): void {
  const { boxes } = tree;
  let top = 0;
  push(0, boxes, 1, solid);
  while (top >= 0) {
    const node = stack[top]!;
    if (gaps[top]! >= search.limitSquare) top--;
    else if (node >= tree.leaves) {
      top--;
      searchLeaf(search, solid, tree, node);
    } else {
      push(top, boxes, 2 * node, solid);
      push(top + 1, boxes, 2 * node + 1, solid);
      // The nearer child lies on top.
      if (gaps[top]! < gaps[top + 1]! - TIE) swap(top, top + 1);
      top++;
    }
  }
}

function push(top: number, boxes: Float64Array, node: number, solid: Solid): void {
  stack[top] = node;
  gaps[top] = gapSquare(boxes, 6 * node, solid.boxes, 0);
}

function swap(i: number, j: number): void {
  const node = stack[i]!;
  const gap = gaps[i]!;
  stack[i] = stack[j]!;
  gaps[i] = gaps[j]!;
  stack[j] = node;
  gaps[j] = gap;
}

/** Looks at every triangle of a leaf against every part of the solid that the leaf's box comes near enough to. */
function searchLeaf(search: Search, solid: Solid, tree: PatchTree, leaf: number): void {
  const parts = solid.flats.length / FLAT + 2;
  const groups = parts + 1;
  for (let first = 0, group = groups; first < parts; first += GROUP, group++) {
    if (gapSquare(tree.boxes, 6 * leaf, solid.boxes, 6 * group) >= search.limitSquare) continue;
    const end = Math.min(parts, first + GROUP);
    for (let part = first; part < end; part++)
      if (gapSquare(tree.boxes, 6 * leaf, solid.boxes, 6 * (part + 1)) < search.limitSquare)
        searchPart(search, solid, part, tree, leaf);
  }
}

function searchPart(search: Search, solid: Solid, part: number, tree: PatchTree, leaf: number): void {
  const flat = FLAT * part;
  const first = (leaf - tree.leaves) * LEAF;
  const end = Math.min(tree.order.length, first + LEAF);
  for (let i = first; i < end; i++) {
    const triangle = tree.order[i]!;
    if (flat < solid.flats.length) searchPair(search, solid.flats, flat, tree.mesh, triangle);
    else {
      takeCorners(tree.mesh, triangle);
      const before = search.found[0]!;
      for (let at = 0; at < 9; at += 3)
        pointToEnd(solid, (flat - solid.flats.length) / FLAT, corners, at, search.found);
      take(search, before, triangle);
    }
  }
}

/**
 * A flat against a triangle. First what parts them along the triangle's normal, which mostly decides, along the line of
 * the best found, and along the flat's normal: any direction gives a true bound (separating axis). Then the corners,
 * which are cheap and mostly near the truth, then the edges.
 */
function searchPair(search: Search, flats: Flats, flat: number, mesh: Mesh, triangle: number): void {
  let bound = planeParted(flats, flat, mesh, triangle);
  if (bound >= search.limit) return;
  takeCorners(mesh, triangle);
  bound = Math.max(bound, parted(flats, flat, search.towards, 0));
  if (bound >= search.limit) return;
  bound = Math.max(bound, parted(flats, flat, flats, flat + NORMAL));
  if (bound >= search.limit) return;
  let before = search.found[0]!;
  cornersToTriangle(flats, flat, corners, search.found);
  take(search, before, triangle);
  if (bound >= search.limit) return;
  before = search.found[0]!;
  edgesToTriangle(flats, flat, corners, search.found);
  // What a bound above 0 keeps apart does not meet.
  if (bound <= 0) crossTriangle(flats, flat, corners, search.found);
  take(search, before, triangle);
}

/** Notes the triangle and tightens the limit when `found` has become better. */
function take(search: Search, before: number, triangle: number): void {
  const { found, towards } = search;
  if (found[0]! >= before) return;
  const best = Math.sqrt(found[0]!);
  search.nearest = triangle;
  if (best < search.limit) {
    search.limit = best;
    search.limitSquare = found[0]!;
  }
  for (let axis = 0; axis < 3; axis++) towards[axis] = best > 0 ? (found[4 + axis]! - found[1 + axis]!) / best : 0;
}

/** The square of how far two boxes are apart. */
function gapSquare(a: Float64Array, i: number, b: Float64Array, j: number): number {
  const x = apart(a[i]!, a[i + 3]!, b[j]!, b[j + 3]!);
  const y = apart(a[i + 1]!, a[i + 4]!, b[j + 1]!, b[j + 4]!);
  const z = apart(a[i + 2]!, a[i + 5]!, b[j + 2]!, b[j + 5]!);
  return x * x + y * y + z * z;
}

function apart(low: number, high: number, low2: number, high2: number): number {
  return low > high2 ? low - high2 : low2 > high ? low2 - high : 0;
}

function takeCorners({ positions, triangles }: Mesh, t: number): void {
  for (let corner = 0; corner < 3; corner++) {
    const at = 3 * triangles[3 * t + corner]!;
    corners[3 * corner] = positions[at]!;
    corners[3 * corner + 1] = positions[at + 1]!;
    corners[3 * corner + 2] = positions[at + 2]!;
  }
}

/** How far a triangle's plane lies beyond the flat. */
function planeParted(flats: Flats, flat: number, { positions, triangles, normals }: Mesh, triangle: number): number {
  const n = 3 * triangle;
  const x = normals[n]!;
  const y = normals[n + 1]!;
  const z = normals[n + 2]!;
  const at = 3 * triangles[n]!;
  return x * positions[at]! + y * positions[at + 1]! + z * positions[at + 2]! - furthest(flats, flat, x, y, z);
}

/** How far the taken triangle lies beyond the flat along the unit direction that stands at `at`. */
function parted(flats: Flats, flat: number, along: Float64Array, at: number): number {
  const x = along[at]!;
  const y = along[at + 1]!;
  const z = along[at + 2]!;
  const a = x * corners[0]! + y * corners[1]! + z * corners[2]!;
  const b = x * corners[3]! + y * corners[4]! + z * corners[5]!;
  const c = x * corners[6]! + y * corners[7]! + z * corners[8]!;
  return (a < b ? (a < c ? a : c) : b < c ? b : c) - furthest(flats, flat, x, y, z);
}

/** How far a flat reaches along a direction. */
function furthest(flats: Flats, flat: number, x: number, y: number, z: number): number {
  const along = (at: number) => x * flats[at]! + y * flats[at + 1]! + z * flats[at + 2]!;
  const e = along(flat + FIRST);
  const d = along(flat + SECOND);
  return along(flat) + (e > 0 ? e : 0) + (d > 0 ? d : 0);
}

/**
 * Betters `found` by the point that stands at `i` in `c` against a flat end; the end's edges are asked with the flats
 * around it.
 */
function pointToEnd(
  { face, profile, depth, bounds: reach }: Solid,
  end: number,
  c: Float64Array,
  i: number,
  found: Found,
): void {
  const x = c[i]!;
  const y = c[i + 1]!;
  const z = c[i + 2]!;
  if (z < reach[1] || z > reach[3]) return;
  const dx = x - face.origin[0];
  const dy = y - face.origin[1];
  const s = dx * face.along[0] + dy * face.along[1];
  if (s < reach[0] || s > reach[2]) return;
  const t = dx * face.inward[0] + dy * face.inward[1];
  const gap = end === 1 ? t - depth[1] : depth[0] - t;
  if (gap < 0 || gap * gap >= found[0]! || !isInside(profile, s, z)) return;
  const back = end === 1 ? -gap : gap;
  found[0] = gap * gap;
  found[1] = x + back * face.inward[0];
  found[2] = y + back * face.inward[1];
  found[3] = z;
  found[4] = x;
  found[5] = y;
  found[6] = z;
}

/** Whether the chamber's nearest point lies on the inner side of the surface's nearest triangle. */
function liesInside(found: Found, { normals }: Mesh, triangle: number): boolean {
  const n = 3 * triangle;
  const height =
    normals[n]! * (found[1]! - found[4]!) +
    normals[n + 1]! * (found[2]! - found[5]!) +
    normals[n + 2]! * (found[3]! - found[6]!);
  return height <= INSIDE;
}

/** A nearest point this little outside, mm, is rounding. */
const INSIDE = 1e-6;
