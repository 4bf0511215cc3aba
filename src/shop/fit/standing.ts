import type { Misfit } from './refit.js';
import { stageOf, type BlockState } from '../log/state.js';
import type { Step } from '../log/step.js';

/**
 * How far a block has come that fits today's plan: what must be made new has come nowhere, what must be trimmed is only
 * cut.
 */
export function stageThatFits(state: BlockState | undefined, misfit: Misfit | undefined): Step | undefined {
  const stage = stageOf(state);
  if (!misfit || misfit.kind === 'turn') return stage;
  return misfit.kind === 'trim' ? 'cut' : undefined;
}
