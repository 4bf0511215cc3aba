import { roundedAs } from '../length/rounded.js';
import type { Units } from '../length/units.js';
import type { Block } from './block.js';

/** Blocks that are cut to one size. All mm. */
export interface BlockSize {
  readonly length: number;
  readonly height: number;
  readonly thickness: number;
  readonly blocks: readonly string[];
}

/** The sizes that blocks are cut to as they are written down, the largest first: of the rectangle around a block as it lies in its face, and its thickness. */
export function sizesOf(blocks: readonly Block[], units: Units): BlockSize[] {
  const sizes: (BlockSize & { blocks: string[] })[] = [];
  for (const { id, made } of [...blocks].sort((a, b) => b.made.volume - a.made.volume)) {
    const [length, height, thickness] = [made.length, made.height, made.thickness].map((mm) =>
      roundedAs('block', mm, units),
    ) as [number, number, number];
    const same = sizes.find((size) => size.length === length && size.height === height && size.thickness === thickness);
    if (same) same.blocks.push(id);
    else sizes.push({ length, height, thickness, blocks: [id] });
  }
  return sizes;
}
