import type { ViewOf } from './app.js';
import { STEP_DONE } from './words.js';

/** Says what was just pressed here, and takes it back if the glove hit the wrong one. Stays until the next press. */
export function UndoBar({ shop, shown }: ViewOf) {
  const { pressed } = shown;
  return (
    <div class={pressed ? 'undo' : 'undo nothing'}>
      <p role="status">{pressed ? `${pressed.block}: ${STEP_DONE[pressed.step]}` : ''}</p>
      {pressed && (
        <>
          <button type="button" onClick={() => void shop.undo(pressed.block, pressed.step)}>
            Undo
          </button>
          <button type="button" onClick={() => shop.dismissPressed()} aria-label="Hide this bar">
            ×
          </button>
        </>
      )}
    </div>
  );
}
