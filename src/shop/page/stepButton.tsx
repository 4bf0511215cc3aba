import type { ViewOf } from './viewOf.js';
import { stageOf } from '../log/state.js';
import { stepAfter } from '../log/step.js';
import { TO_DO } from '../report/trackReport.js';
import { STEP_DONE } from './words.js';

/** The one large touch: records the next step of a block. Where the plan has changed for it, that comes first. */
export function StepButton({ shop, state, whole, open, id }: ViewOf & { readonly id: string }) {
  const misfit = whole.refits.get(id);
  if (misfit) {
    return (
      <button type="button" class="step changed" onClick={() => open(id)} aria-label={`${id}, ${TO_DO[misfit.kind]}`}>
        <small>plan changed</small> {TO_DO[misfit.kind]}
      </button>
    );
  }
  const next = stepAfter(stageOf(state.blocks.get(id)));
  if (!next) return <span class="all-done">Glued in</span>;
  return (
    <button
      type="button"
      class="step"
      onClick={(event) => void shop.press(id, next, event)}
      aria-label={`${id}, next: ${STEP_DONE[next]}`}
    >
      <small>next</small> {STEP_DONE[next]}
    </button>
  );
}
