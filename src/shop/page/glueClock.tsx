import type { ViewOf } from './viewOf.js';
import { useEffect, useState } from 'preact/hooks';
import { sayCountdown } from './sayClock.js';
import { OPEN_TIME_WORDS } from './words.js';

/** Before the end of the open time the clock warns, ms. */
const WARNING = 5 * 60_000;
const MINUTE = 60_000;

/** The open time of the glue, the same on every phone. */
export function GlueClock({ shop, state, batch }: ViewOf & { readonly batch: string }) {
  const [minutes, setMinutes] = useState('');
  const now = useSeconds(shop);
  useEffect(() => void shop.remembered('minutes').then((last) => last !== undefined && setMinutes(last)), []);
  const timer = state.timers.get(batch);
  const left = timer && timer.minutes > 0 ? timer.started + timer.minutes * MINUTE - now : undefined;
  const running = left !== undefined;
  const warned = running && left < WARNING;
  useEffect(() => {
    if (!warned) return;
    navigator.vibrate?.([300, 200, 300]);
  }, [warned, running && left < 0]);
  useAwake(running && left > 0);
  const start = (event: Event) => {
    event.preventDefault();
    const asked = Number(minutes.replace(',', '.'));
    if (!(asked > 0 && asked <= 24 * 60)) return;
    void shop.remember('minutes', minutes);
    void shop.record({ kind: 'timer', batch, minutes: asked });
  };
  if (!running) {
    return (
      <form class="clock" onSubmit={start}>
        <label>
          Open time, min
          <input
            value={minutes}
            inputMode="decimal"
            required
            pattern="[0-9]+([.,][0-9]+)?"
            onInput={(event) => setMinutes(event.currentTarget.value)}
          />
        </label>
        <button type="submit">Glue is open</button>
        <p>{OPEN_TIME_WORDS}</p>
      </form>
    );
  }
  return (
    <div class={warned ? 'clock late' : 'clock'}>
      <p role="timer" aria-label="Open time left" class="count">
        {sayCountdown(left)}
      </p>
      <p role="status">
        {left < 0
          ? 'The open time is over. Press in nothing more; clamp what is in.'
          : warned
            ? 'Less than five minutes left.'
            : 'of open time left'}
      </p>
      <button type="button" onClick={() => void shop.record({ kind: 'timer', batch, minutes: 0 })}>
        Stop the clock
      </button>
    </div>
  );
}

function useSeconds(shop: ViewOf['shop']): number {
  const [now, setNow] = useState(shop.clock());
  useEffect(() => {
    const timer = setInterval(() => setNow(shop.clock()), 500);
    return () => clearInterval(timer);
  }, [shop]);
  return now;
}

/**
 * Keeps the screen lit while the glue is open, where the browser allows it (W3C Screen Wake Lock; not over plain HTTP).
 */
function useAwake(awake: boolean): void {
  useEffect(() => {
    if (!awake || !('wakeLock' in navigator)) return;
    const lock = navigator.wakeLock.request('screen').catch(() => undefined);
    return () => void lock.then((held) => held?.release());
  }, [awake]);
}
