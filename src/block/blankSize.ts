import { roundedAs } from '../length/rounded.js';
import { MM_PER_INCH, type Units } from '../length/units.js';
import type { Block } from './block.js';
import { sawnFrom, type Sawn } from './sawn.js';

/**
 * Blanks are rounded up to whole steps, so that the fence is set to a figure that stands on a rule: 1 mm or 1/16 in.
 */
const STEP: Readonly<Record<Units, number>> = { mm: 1, in: MM_PER_INCH / 16 };
/** In steps: what adding up leaves. */
const ROUNDING = 1e-6;

/** The rectangle a block is sawn from, as the saw is set, mm. */
export interface BlankSize {
  readonly length: number;
  readonly height: number;
}

/** Exact where the saw alone gives the finished block; otherwise whole steps up, the outline marked on it. */
export function blankSizeOf({ length, height, sides }: Sawn, units: Units): BlankSize {
  const up = (mm: number) => (sides ? mm : Math.ceil(mm / STEP[units] - ROUNDING) * STEP[units]);
  return { length: up(length), height: up(height) };
}

/** The same with the thickness, as it stands on every paper, label and list. */
export function sawnSizeOf({ made }: Block, units: Units): BlankSize & { readonly thickness: number } {
  const { length, height } = blankSizeOf(sawnFrom(made.outline), units);
  const written = (mm: number) => roundedAs('block', mm, units);
  return { length: written(length), height: written(height), thickness: written(made.thickness) };
}
