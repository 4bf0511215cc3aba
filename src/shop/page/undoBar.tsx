import type { ViewOf } from './viewOf.js';
import { STEP_DONE } from './words.js';

/**
 * Says what was pressed here last, and undoes it if the glove hit the wrong one; then the one before it. Stays until
 * the next press.
 */
export function UndoBar({ shop, shown }: ViewOf) {
  const pressed = shown.pressed.at(-1);
  const more = shown.pressed.length - 1;
  return (
    <div class={pressed ? 'undo' : 'undo nothing'}>
      <p role="status">
        {pressed ? `${pressed.block}: ${STEP_DONE[pressed.step]}` : ''}
        {pressed && more > 0 && <small>{`and ${more} before it`}</small>}
      </p>
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
