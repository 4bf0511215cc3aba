import { PATCHES, type Mesh, type Patch } from '../board/mesh.js';

/**
 * The triangles of one patch in a tree of boxes, so that the near ones are found without asking the far ones.
 *
 * Layout: `corners` holds nine numbers a triangle (three corners, x y z), `planes` four (outward unit normal, then normal · corner).
 * Triangles that lie near each other stand near each other, `LEAF` to a leaf. `boxes` holds six numbers a node (low x y z, high x y z) of a
 * complete binary tree: the root is node 1, the children of node i are 2i and 2i + 1, the leaves are nodes `leaves` to 2·`leaves` − 1.
 */
export interface PatchTree {
  readonly count: number;
  readonly corners: Float64Array;
  readonly planes: Float64Array;
  readonly leaves: number;
  readonly boxes: Float64Array;
}

/** Triangles in a leaf. */
export const LEAF = 4;
/** Side of the tiles by which triangles are brought together, mm: a few cells of the mesh. */
const TILE = 24;

export type PatchTrees = Readonly<Record<Patch, PatchTree>>;

export function patchTreesOf(mesh: Mesh): PatchTrees {
  const order = tileOrder(mesh);
  const of = (code: number) =>
    patchTree(
      mesh,
      order.filter((t) => mesh.patches[t] === code),
    );
  return {
    deck: of(PATCHES.indexOf('deck')),
    bottom: of(PATCHES.indexOf('bottom')),
    rail: of(PATCHES.indexOf('rail')),
  };
}

function patchTree({ positions, triangles }: Mesh, order: Uint32Array): PatchTree {
  const count = order.length;
  const corners = new Float64Array(9 * count);
  const planes = new Float64Array(4 * count);
  for (let i = 0; i < count; i++) {
    const from = 9 * i;
    for (let corner = 0; corner < 3; corner++) {
      const vertex = 3 * triangles[3 * order[i]! + corner]!;
      for (let axis = 0; axis < 3; axis++) corners[from + 3 * corner + axis] = positions[vertex + axis]!;
    }
    setPlane(corners, from, planes, 4 * i);
  }
  let leaves = 1;
  while (leaves * LEAF < count) leaves *= 2;
  const boxes = new Float64Array(12 * leaves);
  for (let node = 2 * leaves - 1; node >= 1; node--) {
    const box = 6 * node;
    if (node >= leaves) boxLeaf(corners, (node - leaves) * LEAF, count, boxes, box);
    else {
      for (let axis = 0; axis < 3; axis++) {
        boxes[box + axis] = Math.min(boxes[2 * box + axis]!, boxes[2 * box + 6 + axis]!);
        boxes[box + 3 + axis] = Math.max(boxes[2 * box + 3 + axis]!, boxes[2 * box + 9 + axis]!);
      }
    }
  }
  return { count, corners, planes, leaves, boxes };
}

function setPlane(c: Float64Array, from: number, planes: Float64Array, to: number): void {
  const ux = c[from + 3]! - c[from]!,
    uy = c[from + 4]! - c[from + 1]!,
    uz = c[from + 5]! - c[from + 2]!;
  const vx = c[from + 6]! - c[from]!,
    vy = c[from + 7]! - c[from + 1]!,
    vz = c[from + 8]! - c[from + 2]!;
  const nx = uy * vz - uz * vy,
    ny = uz * vx - ux * vz,
    nz = ux * vy - uy * vx;
  const size = Math.hypot(nx, ny, nz) || 1;
  planes[to] = nx / size;
  planes[to + 1] = ny / size;
  planes[to + 2] = nz / size;
  planes[to + 3] = (nx * c[from]! + ny * c[from + 1]! + nz * c[from + 2]!) / size;
}

function boxLeaf(corners: Float64Array, first: number, count: number, boxes: Float64Array, box: number): void {
  boxes.fill(Infinity, box, box + 3);
  boxes.fill(-Infinity, box + 3, box + 6);
  const end = 9 * Math.min(count, first + LEAF);
  for (let at = 9 * first; at < end; at += 3) {
    for (let axis = 0; axis < 3; axis++) {
      const value = corners[at + axis]!;
      if (value < boxes[box + axis]!) boxes[box + axis] = value;
      if (value > boxes[box + 3 + axis]!) boxes[box + 3 + axis] = value;
    }
  }
}

/**
 * The triangles' numbers, tile by tile, the tiles along a curve that stays near itself.
 * Source of the curve: G. M. Morton, "A computer oriented geodetic data base" (1966).
 */
function tileOrder({ positions, triangles }: Mesh): Uint32Array {
  const count = triangles.length / 3;
  const tile = new Uint32Array(count);
  let lowY = Infinity;
  for (let i = 1; i < positions.length; i += 3) lowY = Math.min(lowY, positions[i]!);
  let tiles = 0;
  for (let t = 0; t < count; t++) {
    const a = 3 * triangles[3 * t]!;
    const code = interleave(Math.max(0, positions[a]! / TILE) | 0, Math.max(0, (positions[a + 1]! - lowY) / TILE) | 0);
    tile[t] = code;
    if (code >= tiles) tiles = code + 1;
  }
  const start = new Uint32Array(tiles + 1);
  for (let t = 0; t < count; t++) start[tile[t]! + 1]!++;
  for (let i = 0; i < tiles; i++) start[i + 1]! += start[i]!;
  const order = new Uint32Array(count);
  for (let t = 0; t < count; t++) order[start[tile[t]!]!++] = t;
  return order;
}

/** The bits of two numbers below 1024, in turn. */
function interleave(a: number, b: number): number {
  return spread(a & 1023) | (spread(b & 1023) << 1);
}

function spread(n: number): number {
  n = (n | (n << 8)) & 0x00ff00ff;
  n = (n | (n << 4)) & 0x0f0f0f0f;
  n = (n | (n << 2)) & 0x33333333;
  return (n | (n << 1)) & 0x55555555;
}
