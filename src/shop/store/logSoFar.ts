import type { StoredEvent } from '../log/event.js';
import { NOTHING_YET, stateAfter, type ShopState } from '../log/state.js';
import type { LogPart } from './eventRow.js';

/** The log as far as it was read, and where the shop stands by it. */
export class LogSoFar {
  readonly events: StoredEvent[] = [];
  readonly passedOver: string[] = [];
  state: ShopState = NOTHING_YET;
  /** Number and key of the last entry read. */
  last = 0;
  lastKey = '';
  private told = 0;

  take({ events, passedOver, last, lastKey }: LogPart): void {
    if (last === 0) return;
    for (const event of events) this.events.push(event);
    this.passedOver.push(...passedOver);
    if (events.length > 0) this.state = stateAfter(this.state, events);
    this.last = last;
    this.lastKey = lastKey;
  }

  /** What was taken in since this was asked last. */
  news(): readonly StoredEvent[] {
    const news = this.events.slice(this.told);
    this.told = this.events.length;
    return news;
  }

  /** Every event with a higher number, oldest first. */
  after(number: number): readonly StoredEvent[] {
    let [from, to] = [0, this.events.length];
    while (from < to) {
      const middle = (from + to) >> 1;
      if (this.events[middle]!.number <= number) from = middle + 1;
      else to = middle;
    }
    return this.events.slice(from);
  }
}
