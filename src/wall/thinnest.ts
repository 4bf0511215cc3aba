import type { Mesh } from '../board/mesh.js';
import { cornersToTriangle, crossTriangle, edgesToTriangle, noFound, type Found } from './closest.js';
import { LEAF, type PatchTree } from './patchTree.js';
import { GROUP, inProfile, type Solid } from './solid.js';

/** The thinnest place between a chamber and a part of the surface. */
export interface Thinnest {
  /** Certified: never more than the distance on the mesh, and at most `SLACK` less, mm. 0 where they meet, negative where the chamber lies outside. */
  readonly distance: number;
  /** Where it is on the surface and on the chamber, board frame. */
  readonly onSurface: readonly [number, number, number];
  readonly onChamber: readonly [number, number, number];
}

/** What the search may leave undecided, mm: pairs that cannot be nearer than the best found by more than this are passed over. */
export const SLACK = 0.04;

/** Gaps that differ by less, mm, are the same: what is looked at first must not hang on the last bits of a machine. */
const TIE = 1e-9;
/** Nodes still to be visited; a walk keeps one a level. */
const stack = new Int32Array(64);
/** The nine corner numbers of the triangle being looked at. */
const corners = new Float64Array(9);

/**
 * The smallest distance between a chamber's solid and a patch, or several, by branch and bound over the patches' trees.
 *
 * Leaves are met nearest first. A pair of flat and triangle is bounded from below by their boxes and by the two planes (the triangle's
 * against the flat's corners, the flat's against the triangle's); only pairs whose bound lies under the best found are measured exactly.
 * What is passed over is remembered by its bound, so the result is a true lower bound. Empty patches are infinitely far.
 */
export function thinnest(solid: Solid, trees: readonly PatchTree[]): Thinnest {
  const search: Search = {
    found: noFound(),
    nearest: -1,
    towards: new Float64Array(3),
    passed: Infinity,
    passedSquare: Infinity,
    limit: Infinity,
    limitSquare: Infinity,
  };
  for (const tree of trees) if (tree.order.length > 0) searchTree(search, solid, tree);
  const { found, nearest } = search;
  if (nearest < 0) return { distance: Infinity, onSurface: [NaN, NaN, NaN], onChamber: [NaN, NaN, NaN] };
  const best = Math.sqrt(found[0]!);
  const passed = Math.min(search.passed, Math.sqrt(search.passedSquare));
  return {
    distance: liesInside(found, trees[0]!.mesh, nearest) ? Math.min(best, passed) : -best,
    onSurface: [found[4]!, found[5]!, found[6]!],
    onChamber: [found[1]!, found[2]!, found[3]!],
  };
}

/** How far a search has come. */
interface Search {
  readonly found: Found;
  /** The triangle that `found` lies on, and the unit direction from the chamber to it. */
  nearest: number;
  readonly towards: Float64Array;
  /** The least bound of all that was passed over: of pairs, and the square of it of boxes. */
  passed: number;
  passedSquare: number;
  /** What need not be looked at: `found` less `SLACK`; and its square, 0 where it is less than nothing. */
  limit: number;
  limitSquare: number;
}

function searchTree(search: Search, solid: Solid, tree: PatchTree): void {
  let top = 0;
  stack[top++] = 1;
  while (top > 0) {
    const node = stack[--top]!;
    if (isPassed(search, gapSquare(tree.boxes, 6 * node, solid.boxes, 0))) continue;
    if (node >= tree.leaves) searchLeaf(search, solid, tree, node);
    else {
      const leftFirst =
        gapSquare(tree.boxes, 12 * node, solid.boxes, 0) < gapSquare(tree.boxes, 12 * node + 6, solid.boxes, 0) - TIE;
      stack[top++] = 2 * node + (leftFirst ? 1 : 0);
      stack[top++] = 2 * node + (leftFirst ? 0 : 1);
    }
  }
}

/** Whether boxes so far apart need not be looked into; if so it is remembered. */
function isPassed(search: Search, gap: number): boolean {
  if (gap < search.limitSquare) return false;
  if (gap < search.passedSquare) search.passedSquare = gap;
  return true;
}

/** Looks at every triangle of a leaf against every part of the solid that the leaf's box comes near enough to. */
function searchLeaf(search: Search, solid: Solid, tree: PatchTree, leaf: number): void {
  const parts = solid.flats.length + 2;
  const groups = parts + 1;
  // Nothing found yet: what is likely to be nearest first, so that most else need not be looked at.
  if (search.nearest < 0) searchPart(search, solid, nearestPart(solid, tree, leaf), tree, leaf);
  for (let first = 0, group = groups; first < parts; first += GROUP, group++) {
    if (isPassed(search, gapSquare(tree.boxes, 6 * leaf, solid.boxes, 6 * group))) continue;
    const end = Math.min(parts, first + GROUP);
    for (let part = first; part < end; part++)
      if (!isPassed(search, gapSquare(tree.boxes, 6 * leaf, solid.boxes, 6 * (part + 1))))
        searchPart(search, solid, part, tree, leaf);
  }
}

function nearestPart({ flats, boxes }: Solid, tree: PatchTree, leaf: number): number {
  let nearest = 0;
  let least = Infinity;
  for (let part = 0; part < flats.length + 2; part++) {
    const gap = gapSquare(tree.boxes, 6 * leaf, boxes, 6 * (part + 1));
    if (gap >= least - TIE) continue;
    least = gap;
    nearest = part;
  }
  return nearest;
}

function searchPart(search: Search, solid: Solid, part: number, tree: PatchTree, leaf: number): void {
  const first = (leaf - tree.leaves) * LEAF;
  const end = Math.min(tree.order.length, first + LEAF);
  for (let i = first; i < end; i++) {
    const triangle = tree.order[i]!;
    takeCorners(tree.mesh, triangle);
    if (part < solid.flats.length) searchPair(search, solid.flats[part]!, tree.mesh, triangle);
    else {
      const before = search.found[0]!;
      cornersToEnd(solid, part - solid.flats.length, search.found);
      take(search, before, triangle);
    }
  }
}

/** A flat against the taken triangle: the bound first, then the corners, which are cheap and mostly near the truth, then the edges. */
function searchPair(search: Search, flat: Float64Array, mesh: Mesh, triangle: number): void {
  const bound = pairBound(flat, mesh.normals, triangle, search);
  if (bound >= search.limit) {
    search.passed = Math.min(search.passed, bound);
    return;
  }
  let before = search.found[0]!;
  cornersToTriangle(flat, corners, search.found);
  take(search, before, triangle);
  if (bound >= search.limit) {
    search.passed = Math.min(search.passed, bound);
    return;
  }
  before = search.found[0]!;
  edgesToTriangle(flat, corners, search.found);
  // What a bound above 0 keeps apart does not meet.
  if (bound <= 0) crossTriangle(flat, corners, search.found);
  take(search, before, triangle);
}

/** Notes the triangle and tightens the limit when `found` has become better. */
function take(search: Search, before: number, triangle: number): void {
  const { found, towards } = search;
  if (found[0]! >= before) return;
  const best = Math.sqrt(found[0]!);
  search.nearest = triangle;
  search.limit = best - SLACK;
  search.limitSquare = search.limit > 0 ? search.limit * search.limit : 0;
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

/**
 * No point of the flat is nearer to the taken triangle than this: what parts them along the triangle's normal, along the flat's, or along
 * the line of the best found, whichever is most. Any direction gives a true bound (separating axis).
 */
function pairBound(
  flat: Float64Array,
  normals: Float64Array,
  triangle: number,
  { nearest, towards, limit }: Search,
): number {
  let bound = -Infinity;
  if (nearest >= 0) {
    bound = parted(flat, towards, 0);
    if (bound >= limit) return bound;
  }
  bound = Math.max(bound, parted(flat, normals, 3 * triangle));
  return bound >= limit ? bound : Math.max(bound, parted(flat, flat, 9));
}

/** How far the taken triangle lies beyond the flat along the unit direction that stands at `at`. */
function parted(flat: Float64Array, along: Float64Array, at: number): number {
  const x = along[at]!;
  const y = along[at + 1]!;
  const z = along[at + 2]!;
  const a = x * corners[0]! + y * corners[1]! + z * corners[2]!;
  const b = x * corners[3]! + y * corners[4]! + z * corners[5]!;
  const c = x * corners[6]! + y * corners[7]! + z * corners[8]!;
  const nearest = a < b ? (a < c ? a : c) : b < c ? b : c;
  const e = x * flat[3]! + y * flat[4]! + z * flat[5]!;
  const d = x * flat[6]! + y * flat[7]! + z * flat[8]!;
  return nearest - (x * flat[0]! + y * flat[1]! + z * flat[2]!) - (e > 0 ? e : 0) - (d > 0 ? d : 0);
}

/** The taken triangle's corners against a flat end; its edges are asked with the flats around it. */
function cornersToEnd({ face, profile, depth, reach }: Solid, end: number, found: Found): void {
  for (let i = 0; i < 9; i += 3) {
    const z = corners[i + 2]!;
    if (z < reach[1] || z > reach[3]) continue;
    const dx = corners[i]! - face.origin[0];
    const dy = corners[i + 1]! - face.origin[1];
    const s = dx * face.along[0] + dy * face.along[1];
    if (s < reach[0] || s > reach[2]) continue;
    const t = dx * face.inward[0] + dy * face.inward[1];
    const gap = end === 1 ? t - depth[1] : depth[0] - t;
    if (gap < 0 || gap * gap >= found[0]! || !inProfile(profile, s, z)) continue;
    const back = end === 1 ? -gap : gap;
    found[0] = gap * gap;
    found[1] = corners[i]! + back * face.inward[0];
    found[2] = corners[i + 1]! + back * face.inward[1];
    found[3] = z;
    found[4] = corners[i]!;
    found[5] = corners[i + 1]!;
    found[6] = z;
  }
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
