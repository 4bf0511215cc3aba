import { PATCHES, type Mesh, type Patch } from '../board/mesh.js';

/**
 * The triangles of one patch in a tree of boxes, so that the near ones are found without asking the far ones.
 *
 * Layout: `order` holds the numbers of the patch's triangles in the mesh; those that lie near each other stand near
 * each other, `LEAF` to a leaf. `boxes` holds six numbers a node (low x y z, high x y z) of a complete binary tree: the
 * root is node 1, the children of node i are 2i and 2i + 1, the leaves are nodes `leaves` to 2·`leaves` − 1.
 */
export interface PatchTree {
  readonly mesh: Mesh;
  readonly order: Uint32Array;
  readonly leaves: number;
  readonly boxes: Float64Array;
}

/** Triangles in a leaf. */
export const LEAF = 4;
/** Side of the tiles by which triangles are brought together, mm: a few cells of the mesh. */
const TILE = 24;

export type PatchTrees = Readonly<Record<Patch, PatchTree>>;

export function patchTreesOf(mesh: Mesh): PatchTrees {
  const orders = tileOrders(mesh);
  const of = (patch: Patch) => patchTree(mesh, orders[PATCHES.indexOf(patch)]!);
  return { deck: of('deck'), bottom: of('bottom'), rail: of('rail') };
}

function patchTree(mesh: Mesh, order: Uint32Array): PatchTree {
  let leaves = 1;
  while (leaves * LEAF < order.length) leaves *= 2;
  const boxes = new Float64Array(12 * leaves);
  for (let node = 2 * leaves - 1; node >= 1; node--) {
    const box = 6 * node;
    if (node >= leaves) boxLeaf(mesh, order, (node - leaves) * LEAF, boxes, box);
    else {
      const child = 2 * box;
      for (let axis = 0; axis < 3; axis++) {
        const low = boxes[child + axis]!;
        const low2 = boxes[child + 6 + axis]!;
        const high = boxes[child + 3 + axis]!;
        const high2 = boxes[child + 9 + axis]!;
        boxes[box + axis] = low < low2 ? low : low2;
        boxes[box + 3 + axis] = high > high2 ? high : high2;
      }
    }
  }
  return { mesh, order, leaves, boxes };
}

function boxLeaf(
  { positions, triangles }: Mesh,
  order: Uint32Array,
  first: number,
  boxes: Float64Array,
  box: number,
): void {
  for (let axis = 0; axis < 3; axis++) {
    boxes[box + axis] = Infinity;
    boxes[box + 3 + axis] = -Infinity;
  }
  const end = Math.min(order.length, first + LEAF);
  for (let i = first; i < end; i++) {
    for (let corner = 3 * order[i]!; corner < 3 * order[i]! + 3; corner++) {
      const at = 3 * triangles[corner]!;
      for (let axis = 0; axis < 3; axis++) {
        const value = positions[at + axis]!;
        if (value < boxes[box + axis]!) boxes[box + axis] = value;
        if (value > boxes[box + 3 + axis]!) boxes[box + 3 + axis] = value;
      }
    }
  }
}

/**
 * The triangles' numbers of each patch, tile by tile, the tiles along a curve that stays near itself.
 * Source of the curve: G. M. Morton, "A computer oriented geodetic data base" (1966).
 */
function tileOrders({ positions, triangles, patches, alsoPatches }: Mesh): Uint32Array[] {
  const count = patches.length;
  const side = tileFor(positions, count);
  const tile = new Uint32Array(count);
  let lowY = Infinity;
  for (let i = 1; i < positions.length; i += 3) if (positions[i]! < lowY) lowY = positions[i]!;
  let tiles = 0;
  for (let t = 0; t < count; t++) {
    const a = 3 * triangles[3 * t]!;
    const code = interleave(Math.max(0, positions[a]! / side) | 0, Math.max(0, (positions[a + 1]! - lowY) / side) | 0);
    tile[t] = code;
    if (code >= tiles) tiles = code + 1;
  }
  return PATCHES.map((_, patch) => {
    const start = new Uint32Array(tiles + 1);
    const isOf = (t: number) => patches[t] === patch || alsoPatches?.[t] === patch;
    for (let t = 0; t < count; t++) if (isOf(t)) start[tile[t]! + 1]!++;
    for (let i = 0; i < tiles; i++) start[i + 1]! += start[i]!;
    const order = new Uint32Array(start[tiles]!);
    for (let t = 0; t < count; t++) if (isOf(t)) order[start[tile[t]!]!++] = t;
    return order;
  });
}

/** The side of the tiles: smaller where triangles lie denser than a mesh of ours has them. */
function tileFor(positions: Float64Array, count: number): number {
  if (count <= DENSE) return TILE;
  let [length, left, right] = [0, 0, 0];
  for (let i = 0; i < positions.length; i += 3) {
    length = Math.max(length, positions[i]!);
    left = Math.min(left, positions[i + 1]!);
    right = Math.max(right, positions[i + 1]!);
  }
  // Deck and bottom lie one over the other.
  const each = Math.sqrt((IN_TILE * 2 * length * (right - left)) / count);
  return Math.min(TILE, Math.max(each, length / MOST_TILES));
}

/** Triangles from which on a mesh is denser than ours, how many of its a tile is to hold, and tiles along a board. */
const DENSE = 120_000;
const IN_TILE = 8;
const MOST_TILES = 1000;

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
