import { stageOf, type BlockState } from '../log/state.js';
import { STEPS, stepsBehind } from '../log/step.js';
import { STEP_DONE } from './words.js';

/** The steps behind a block as filled squares, and the last of them in words. */
export function StepMarks({ block }: { readonly block: BlockState | undefined }) {
  const stage = stageOf(block);
  return (
    <span class="marks">
      <span aria-hidden="true">
        {STEPS.map((step, i) => (
          <i key={step} class={i < stepsBehind(stage) ? 'done' : ''} />
        ))}
      </span>
      {stage === undefined ? 'Not begun' : STEP_DONE[stage]}
    </span>
  );
}
