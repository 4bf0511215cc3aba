import type { Point } from '../../contour/point.js';
import type { Proud } from '../../block/proud.js';

/** One fill block as the shop follows it: its number, its place in the board, and what it must measure. Millimetres. */
export interface TrackedBlock {
  /** The chamber's number, `R2-07`. It names the place in the board and never changes its meaning. */
  readonly id: string;
  readonly row: string;
  /** Place in the row from the nose, 1 and up. */
  readonly place: number;
  readonly side: 'L' | 'C' | 'R';
  readonly sizes: BlockSizes;
  /** Its chamber seen square to its face, `[s, z]` pairs, closed and straight between them. */
  readonly outline: Outline;
  /** What is cut, with the fit and the corners asked for; absent in plans recorded before it was. */
  readonly made?: MadeShape;
  /** What stands out of the far face once it is glued in, and is planed off. */
  readonly proud?: Proud;
  /** The gluing batch it belongs to; a row is a batch where none is named. */
  readonly batch?: string;
}

export type Outline = readonly Point[];

/** A block as it is cut. Frame and units of `TrackedBlock`. */
export interface MadeShape {
  readonly outline: Outline;
  readonly thickness: number;
  readonly foam: Foam;
}

export interface Foam {
  readonly name: string;
  /** kg/m³. */
  readonly density: number;
}

/** As they stand on the papers, of what the block is sawn from: along the face, across the face, into the piece, mm. */
export interface BlockSizes {
  readonly length: number;
  readonly height: number;
  readonly thickness: number;
}

/** The batch a block is glued in. */
export function batchOf(block: TrackedBlock): string {
  return block.batch ?? block.row;
}

/** The blocks row by row, rows in the order the plan gives them, each row from nose to tail as it lies in the board. */
export function blocksByRow(blocks: readonly TrackedBlock[]): ReadonlyMap<string, readonly TrackedBlock[]> {
  return groupInPlace(blocks, (block) => block.row);
}

/** The blocks batch by batch, each in the order they lie in the board. */
export function blocksByBatch(blocks: readonly TrackedBlock[]): ReadonlyMap<string, readonly TrackedBlock[]> {
  return groupInPlace(blocks, batchOf);
}

function groupInPlace(
  blocks: readonly TrackedBlock[],
  key: (block: TrackedBlock) => string,
): ReadonlyMap<string, readonly TrackedBlock[]> {
  const rowOrder = new Map<string, number>();
  for (const block of blocks) if (!rowOrder.has(block.row)) rowOrder.set(block.row, rowOrder.size);
  const groups = new Map<string, TrackedBlock[]>();
  for (const block of blocks) {
    const group = groups.get(key(block));
    if (group) group.push(block);
    else groups.set(key(block), [block]);
  }
  for (const group of groups.values()) {
    group.sort(
      (a, b) =>
        rowOrder.get(a.row)! - rowOrder.get(b.row)! || a.place - b.place || (a.id < b.id ? -1 : a.id > b.id ? 1 : 0),
    );
  }
  return groups;
}
