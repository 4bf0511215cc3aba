import { stageOf } from '../state.js';
import { stepAfter } from '../step.js';
import type { ViewOf } from './app.js';
import { STEP_DONE } from './words.js';

/** The one large touch: records the next step of a block. Nothing else on the page records a step. */
export function StepButton({ shop, state, id }: ViewOf & { readonly id: string }) {
  const next = stepAfter(stageOf(state.blocks.get(id)));
  if (!next) return <span class="all-done">Glued in</span>;
  return (
    <button
      type="button"
      class="step"
      onClick={() => void shop.press(id, next)}
      aria-label={`${id}, next: ${STEP_DONE[next]}`}
    >
      <small>next</small> {STEP_DONE[next]}
    </button>
  );
}
