import { fitsInside } from './containment.js';
import { stageOf, type BlockState } from './state.js';
import { stepsBehind } from './step.js';
import type { BlockSizes, TrackedBlock } from './trackedBlock.js';

/** What a changed plan means for a block that work has already gone into. */
export type Refit =
  /** As good as it was. */
  | { readonly kind: 'fits' }
  /** Only marked so far: mark it again to the new sizes. */
  | { readonly kind: 'mark-again'; readonly to: BlockSizes }
  /** Larger than needed: take it down to the new sizes. `off` is what comes off each, mm, never below 0. */
  | { readonly kind: 'trim'; readonly to: BlockSizes; readonly off: BlockSizes }
  /** The old one cannot hold the new one: cut another. `short` is what is missing on each size, mm, 0 where only the shape is. */
  | { readonly kind: 'new'; readonly to: BlockSizes; readonly short: BlockSizes }
  /** Already glued in, and the plan now asks for something else: the board and the plan differ here. */
  | { readonly kind: 'glued-in'; readonly to: BlockSizes }
  /** The plan has no such chamber any more. The block and everything recorded about it are kept. */
  | { readonly kind: 'unused' };

/** How closely a sawn and sanded block of foam is made and its chamber routed, mm. Common practice, no source. */
export const FIT_TOLERANCE = 0.5;

/**
 * Compares a block as it was planned when it was cut with the plan as it is now.
 *
 * @param made the block in the plan it was cut (or last trimmed) to
 * @param now the block of the same number in today's plan, if there is one
 */
export function refitOf(made: TrackedBlock, now: TrackedBlock | undefined, state: BlockState): Refit {
  const behind = stepsBehind(stageOf(state));
  if (!now) return { kind: 'unused' };
  if (isSame(made, now)) return { kind: 'fits' };
  if (behind >= stepsBehind('glued')) return { kind: 'glued-in', to: now.sizes };
  if (behind < stepsBehind('cut')) return { kind: 'mark-again', to: now.sizes };
  const holds =
    now.sizes.thickness <= made.sizes.thickness + FIT_TOLERANCE && fitsInside(now.outline, made.outline, FIT_TOLERANCE);
  return holds
    ? { kind: 'trim', to: now.sizes, off: excess(made.sizes, now.sizes) }
    : { kind: 'new', to: now.sizes, short: excess(now.sizes, made.sizes) };
}

/** Number of the plan a block in hand was made to, or none while nothing was done to it. */
export function planMadeTo(state: BlockState): number | undefined {
  const marks = Object.values(state.marks).flat();
  const cut = state.marks.cut ?? [];
  const from = cut.length > 0 ? cut : marks;
  if (from.length === 0) return undefined;
  const first = from.reduce((a, b) => (b.happened < a.happened ? b : a));
  return Math.max(first.plan, state.trimmedTo ?? 0);
}

function isSame(a: TrackedBlock, b: TrackedBlock): boolean {
  return (
    Math.abs(a.sizes.thickness - b.sizes.thickness) <= FIT_TOLERANCE &&
    fitsInside(a.outline, b.outline, FIT_TOLERANCE) &&
    fitsInside(b.outline, a.outline, FIT_TOLERANCE)
  );
}

function excess(from: BlockSizes, over: BlockSizes): BlockSizes {
  return {
    length: Math.max(0, from.length - over.length),
    height: Math.max(0, from.height - over.height),
    thickness: Math.max(0, from.thickness - over.thickness),
  };
}
