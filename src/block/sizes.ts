import type { Units } from '../length/units.js';
import { sawnSizeOf } from './blankSize.js';
import type { Block } from './block.js';

/** Blocks that are cut to one size. All mm. */
export interface BlockSize {
  readonly length: number;
  readonly height: number;
  readonly thickness: number;
  readonly blocks: readonly string[];
}

/**
 * The sizes that blocks are cut to as they are written down, the largest first: of the rectangle a block is sawn from,
 * and its thickness.
 */
export function sizesOf(blocks: readonly Block[], units: Units): BlockSize[] {
  const sizes: (BlockSize & { blocks: string[] })[] = [];
  for (const block of [...blocks].sort((a, b) => b.made.volume - a.made.volume)) {
    const { length, height, thickness } = sawnSizeOf(block, units);
    const same = sizes.find((size) => size.length === length && size.height === height && size.thickness === thickness);
    if (same) same.blocks.push(block.id);
    else sizes.push({ length, height, thickness, blocks: [block.id] });
  }
  return sizes;
}
