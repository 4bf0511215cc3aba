import { toFace } from '../layup/frame.js';
import { closestToTriangle, noFound, type Found } from './closest.js';
import { LEAF, type PatchTree } from './patchTree.js';
import { inProfile, type Solid } from './solid.js';

/** The thinnest place between a chamber and one patch. */
export interface Thinnest {
  /** Certified: never more than the distance on the mesh, and at most `SLACK` less, mm. 0 where they meet, negative where the chamber lies outside. */
  readonly distance: number;
  /** Where it is on the surface and on the chamber, board frame. */
  readonly onSurface: readonly [number, number, number];
  readonly onChamber: readonly [number, number, number];
}

/** What the search may leave undecided, mm: pairs that cannot be nearer than the best found by more than this are passed over. */
export const SLACK = 0.02;

/** How deep a walk through the tree can get. */
const stack = new Int32Array(64);

/**
 * The smallest distance between a chamber's solid and a patch, by branch and bound over the patch's tree for each flat of the chamber.
 *
 * A pair of flat and triangle is bounded from below by their boxes and by the two planes (the triangle's against the flat's corners, the
 * flat's against the triangle's); only pairs whose bound lies under the best found are measured exactly. What is passed over
 * is remembered by its bound, so the result is a true lower bound. An empty patch is infinitely far.
 */
export function thinnest(solid: Solid, tree: PatchTree): Thinnest {
  const found = noFound();
  let triangle = -1;
  let passed = Infinity;
  let limit = Infinity;

  const measured = (t: number, before: number) => {
    if (found[0]! === before) return;
    triangle = t;
    limit = Math.sqrt(found[0]!) - SLACK;
  };
  const pass = (bound: number) => {
    if (bound < passed) passed = bound;
  };

  if (tree.count === 0) return { distance: Infinity, onSurface: [NaN, NaN, NaN], onChamber: [NaN, NaN, NaN] };
  // From the last flat backward: a contour begins along the bottom, so this meets the deck first; either way is right.
  for (let i = solid.flats.length - 1; i >= 0; i--) {
    const flat = solid.flats[i]!;
    walk(
      tree,
      solid.boxes,
      6 * i,
      () => limit,
      pass,
      (t) => {
        const bound = planesBound(flat, tree, t);
        if (bound >= limit) return pass(bound);
        const before = found[0]!;
        closestToTriangle(flat, tree.corners, 9 * t, found);
        measured(t, before);
      },
    );
  }
  const ends = endBoxes(solid);
  for (const end of [0, 1]) {
    walk(
      tree,
      ends,
      6 * end,
      () => limit,
      pass,
      (t) => {
        const before = found[0]!;
        cornersToEnd(solid, end, tree, t, found);
        measured(t, before);
      },
    );
  }

  const best = Math.sqrt(found[0]!);
  const lower = Math.min(best, passed);
  return {
    distance: liesInside(found, tree, triangle) ? lower : -best,
    onSurface: [found[4]!, found[5]!, found[6]!],
    onChamber: [found[1]!, found[2]!, found[3]!],
  };
}

/** Visits every triangle whose leaf's box comes nearer than the limit to the box at `boxes[at]`, nearer children first. */
function walk(
  tree: PatchTree,
  boxes: Float64Array,
  at: number,
  limit: () => number,
  pass: (bound: number) => void,
  visit: (triangle: number) => void,
): void {
  let top = 0;
  stack[top++] = 1;
  while (top > 0) {
    const node = stack[--top]!;
    const gap = boxGap(tree.boxes, 6 * node, boxes, at);
    if (gap >= limit()) {
      pass(gap);
      continue;
    }
    if (node < tree.leaves) {
      const a = boxGap(tree.boxes, 12 * node, boxes, at);
      const b = boxGap(tree.boxes, 12 * node + 6, boxes, at);
      stack[top++] = a < b ? 2 * node + 1 : 2 * node;
      stack[top++] = a < b ? 2 * node : 2 * node + 1;
      continue;
    }
    const first = (node - tree.leaves) * LEAF;
    const end = Math.min(tree.count, first + LEAF);
    for (let t = first; t < end; t++) visit(t);
  }
}

function boxGap(a: Float64Array, i: number, b: Float64Array, j: number): number {
  let square = 0;
  for (let axis = 0; axis < 3; axis++) {
    const gap = Math.max(a[i + axis]! - b[j + 3 + axis]!, b[j + axis]! - a[i + 3 + axis]!);
    if (gap > 0) square += gap * gap;
  }
  return Math.sqrt(square);
}

/** No point of the flat is nearer to the triangle than this: what parts them along the triangle's normal, or along the flat's. */
function planesBound(flat: Float64Array, tree: PatchTree, t: number): number {
  const { planes, corners } = tree;
  const nx = planes[4 * t]!,
    ny = planes[4 * t + 1]!,
    nz = planes[4 * t + 2]!;
  const e = nx * flat[3]! + ny * flat[4]! + nz * flat[5]!;
  const d = nx * flat[6]! + ny * flat[7]! + nz * flat[8]!;
  const corner = nx * flat[0]! + ny * flat[1]! + nz * flat[2]!;
  const byTriangle = planes[4 * t + 3]! - (corner + Math.max(0, e) + Math.max(0, d));

  const mx = flat[9]!,
    my = flat[10]!,
    mz = flat[11]!;
  const c = 9 * t;
  const base = mx * flat[0]! + my * flat[1]! + mz * flat[2]!;
  const byFlat =
    Math.min(
      mx * corners[c]! + my * corners[c + 1]! + mz * corners[c + 2]!,
      mx * corners[c + 3]! + my * corners[c + 4]! + mz * corners[c + 5]!,
      mx * corners[c + 6]! + my * corners[c + 7]! + mz * corners[c + 8]!,
    ) - base;
  return Math.max(byTriangle, byFlat);
}

/** The boxes of the two flat ends of a solid, six numbers each. */
function endBoxes(solid: Solid): Float64Array {
  const boxes = new Float64Array(12);
  for (const end of [0, 1]) {
    boxes.fill(Infinity, 6 * end, 6 * end + 3);
    boxes.fill(-Infinity, 6 * end + 3, 6 * end + 6);
  }
  for (const flat of solid.flats) {
    for (const end of [0, 1]) {
      for (let axis = 0; axis < 3; axis++) {
        const value = flat[axis]! + end * flat[6 + axis]!;
        boxes[6 * end + axis] = Math.min(boxes[6 * end + axis]!, value);
        boxes[6 * end + 3 + axis] = Math.max(boxes[6 * end + 3 + axis]!, value);
      }
    }
  }
  return boxes;
}

/** The triangle's corners against a flat end; its edges are asked with the flats around it. */
function cornersToEnd(
  { face, profile, depth }: Solid,
  end: number,
  { corners }: PatchTree,
  t: number,
  found: Found,
): void {
  for (let i = 9 * t; i < 9 * t + 9; i += 3) {
    const x = corners[i]!,
      y = corners[i + 1]!,
      z = corners[i + 2]!;
    const [s, deep] = toFace(face, x, y);
    const gap = end === 1 ? deep - depth[1] : depth[0] - deep;
    if (gap < 0 || gap * gap >= found[0]! || !inProfile(profile, s, z)) continue;
    const back = end === 1 ? -gap : gap;
    found[0] = gap * gap;
    found[1] = x + back * face.inward[0];
    found[2] = y + back * face.inward[1];
    found[3] = z;
    found[4] = x;
    found[5] = y;
    found[6] = z;
  }
}

/** Whether the chamber's nearest point lies on the inner side of the surface's nearest triangle. */
function liesInside(found: Found, { planes }: PatchTree, triangle: number): boolean {
  const p = 4 * triangle;
  const height = planes[p]! * found[1]! + planes[p + 1]! * found[2]! + planes[p + 2]! * found[3]! - planes[p + 3]!;
  return height <= INSIDE;
}

/** A nearest point this little outside, mm, is rounding. */
const INSIDE = 1e-6;
