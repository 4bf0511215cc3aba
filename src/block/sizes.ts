import type { Block } from './block.js';

/** Blocks that are cut to one size. All mm. */
export interface BlockSize {
  readonly length: number;
  readonly height: number;
  readonly thickness: number;
  readonly blocks: readonly string[];
}

/** Sizes that differ by less are one size at the bench, mm. */
const SAME = 0.5;

/** The sizes that blocks are cut to, the largest first: of the rectangle around a block as it lies in its face, and its thickness. */
export function sizesOf(blocks: readonly Block[]): BlockSize[] {
  const sizes: (BlockSize & { blocks: string[] })[] = [];
  for (const { id, made } of [...blocks].sort((a, b) => b.made.volume - a.made.volume)) {
    const { length, height, thickness } = made;
    const same = sizes.find(
      (size) =>
        Math.abs(size.length - length) < SAME &&
        Math.abs(size.height - height) < SAME &&
        Math.abs(size.thickness - thickness) < SAME,
    );
    if (same) same.blocks.push(id);
    else sizes.push({ length, height, thickness, blocks: [id] });
  }
  return sizes;
}
