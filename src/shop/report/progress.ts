import type { Misfit } from '../fit/refit.js';
import { stageThatFits } from '../fit/standing.js';
import type { ShopState } from '../log/state.js';
import { STEPS, stepsBehind, type Step } from '../log/step.js';
import type { TrackedBlock } from '../log/trackedBlock.js';

/** How far some blocks have come together. */
export interface Progress {
  readonly blocks: number;
  readonly glued: number;
  /** Steps behind, and steps in all: five for each block. */
  readonly stepsDone: number;
  readonly steps: number;
  /** For each step, how many blocks still need it. */
  readonly left: Readonly<Record<Step, number>>;
}

/** How far these blocks have come, a row, a batch or the whole board: only what fits today's plan counts. */
export function progressOf(
  blocks: readonly TrackedBlock[],
  state: ShopState,
  refits: ReadonlyMap<string, Misfit>,
): Progress {
  const behind = blocks.map(({ id }) => stepsBehind(stageThatFits(state.blocks.get(id), refits.get(id))));
  const left = Object.fromEntries(STEPS.map((step, index) => [step, behind.filter((count) => count <= index).length]));
  return {
    blocks: blocks.length,
    glued: behind.filter((count) => count === STEPS.length).length,
    stepsDone: behind.reduce((sum, count) => sum + count, 0),
    steps: blocks.length * STEPS.length,
    left: left as Record<Step, number>,
  };
}
