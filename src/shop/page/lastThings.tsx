import type { ViewOf } from './viewOf.js';
import type { StoredEvent } from '../log/event.js';
import { sayClock } from './sayClock.js';
import { STEP_DONE } from './words.js';

/** What happened last on all phones, the newest first; a step that still holds can be undone. */
export function LastThings({ shop, state }: ViewOf) {
  const events = [...state.recent].reverse();
  return (
    <>
      <h2>Last on all phones</h2>
      <ol class="plain last">
        {events.map((event) => (
          <li key={`${event.client} ${event.seq}`}>
            <span>
              {sayEvent(event)}
              <small>
                {sayClock(event.happened)} {event.who}
                {event.number === 0 && ' – not sent yet'}
              </small>
            </span>
            {event.what.kind === 'step' && event.what.done && holds(event, state) && (
              <button
                type="button"
                aria-label={`Undo: ${sayEvent(event)}`}
                onClick={() => event.what.kind === 'step' && void shop.undo(event.what.block, event.what.step)}
              >
                Undo
              </button>
            )}
          </li>
        ))}
      </ol>
      {events.length === 0 && <p class="none">Nothing yet.</p>}
    </>
  );
}

function sayEvent({ what }: StoredEvent): string {
  switch (what.kind) {
    case 'step':
      return `${what.block}: ${STEP_DONE[what.step]}${what.done ? '' : ', undone'}`;
    case 'note':
      return `${what.block}: “${what.text}”`;
    case 'photo':
      return `${what.block}: photo`;
    case 'trimmed':
      return `${what.block}: trimmed to the changed plan`;
    case 'timer':
      return what.minutes > 0
        ? `Batch ${what.batch}: glue open, ${what.minutes} min`
        : `Batch ${what.batch}: clock stopped`;
  }
}

function holds({ what, client, seq }: StoredEvent, state: ViewOf['state']): boolean {
  if (what.kind !== 'step') return false;
  return (state.blocks.get(what.block)?.marks[what.step] ?? []).some(
    (mark) => mark.client === client && mark.seq === seq,
  );
}
