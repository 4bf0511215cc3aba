import { isSameFoam, shapesOf, turnThatSuits, turnToTrim, type Turn } from './shape.js';
import { stageOf, type BlockState } from '../log/state.js';
import { stepsBehind } from '../log/step.js';
import type { BlockSizes, Foam, TrackedBlock } from '../log/trackedBlock.js';

/** What a changed plan means for a block that work has already gone into. */
export type Refit =
  /** As good as it was. */
  | { readonly kind: 'fits' }
  /** As good as it was, but the other way round. */
  | { readonly kind: 'turn'; readonly turned: Turn }
  /** Only marked so far: mark it again to the new sizes. */
  | { readonly kind: 'mark-again'; readonly to: BlockSizes }
  /** Larger than needed: take it down to the new sizes. `off` is what comes off each, mm, never below 0. */
  | { readonly kind: 'trim'; readonly to: BlockSizes; readonly off: BlockSizes; readonly turned?: Turn }
  /**
   * The old one cannot hold the new one: cut another. `short` is what is missing on each size, mm, 0 where only the
   * shape is.
   */
  | {
      readonly kind: 'new';
      readonly to: BlockSizes;
      readonly short: BlockSizes;
      readonly elsewhere?: Elsewhere | 'none';
    }
  /** Cut from another foam than the plan now asks for. */
  | { readonly kind: 'other-foam'; readonly to: BlockSizes; readonly was: Foam; readonly now: Foam }
  /** Already glued in, and the plan now asks for something else: the board and the plan differ here. */
  | { readonly kind: 'glued-in'; readonly to: BlockSizes }
  /** The plan has no such chamber any more. The block and everything recorded about it are kept. */
  | { readonly kind: 'unused'; readonly elsewhere?: Elsewhere | 'none' };

/** Another place of the plan that the old block serves, and how; `none` where it was tried in all of them in vain. */
export interface Elsewhere {
  readonly place: string;
  readonly turned?: Turn;
  /** Whether it must be trimmed for it. */
  readonly trim: boolean;
}

export type Misfit = Exclude<Refit, { kind: 'fits' }>;

/**
 * Compares a block as it was planned when it was cut with the plan as it is now.
 *
 * @param made the block in the plan it was cut (or last trimmed) to
 * @param now the block of the same number in today's plan, if there is one
 */
export function refitOf(made: TrackedBlock, now: TrackedBlock | undefined, state: BlockState): Refit {
  const behind = stepsBehind(stageOf(state));
  if (!now) return { kind: 'unused' };
  const [old, asked] = shapesOf(made, now);
  const [to, foam] = [now.sizes, isSameFoam(old, asked)];
  const suits = turnThatSuits(old, asked);
  if (foam && suits === undefined) return { kind: 'fits' };
  if (behind >= stepsBehind('glued')) return { kind: 'glued-in', to };
  if (behind < stepsBehind('cut')) return { kind: 'mark-again', to };
  const trims = turnToTrim(old, asked);
  if (trims === false) return { kind: 'new', to, short: excess(to, made.sizes) };
  if (!foam) return { kind: 'other-foam', to, was: old.foam!, now: asked.foam! };
  if (suits !== false) return { kind: 'turn', turned: suits! };
  return { kind: 'trim', to, off: excess(made.sizes, to), ...(trims && { turned: trims }) };
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

function excess(from: BlockSizes, over: BlockSizes): BlockSizes {
  return {
    length: Math.max(0, from.length - over.length),
    height: Math.max(0, from.height - over.height),
    thickness: Math.max(0, from.thickness - over.thickness),
  };
}
