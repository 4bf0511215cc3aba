import type { Step } from './step.js';

/**
 * One thing that happened in the shop, as the device that saw it tells it. Events are only ever added; an undo is an
 * event too. `(client, seq)` names an event for good: delivered twice, it counts once.
 */
export interface ShopEvent {
  /** The browser or command that made it: a random name it keeps. */
  readonly client: string;
  /** That client's own count, 1 and up. */
  readonly seq: number;
  /**
   * Number of the last event the client knew when it made this one. An undo takes back only what its maker could see.
   */
  readonly seen: number;
  /** Number of the plan the client was looking at. */
  readonly plan: number;
  /** The client's own clock, ms since 1970. May be wrong; nothing is decided by it. */
  readonly at: number;
  /** Who, in their own words; may be empty. */
  readonly who: string;
  readonly via: 'page' | 'command' | 'csv';
  readonly what: Happening;
}

export type Happening =
  | { readonly kind: 'step'; readonly block: string; readonly step: Step; readonly done: boolean }
  | { readonly kind: 'note'; readonly block: string; readonly text: string }
  | { readonly kind: 'photo'; readonly block: string; readonly photo: string }
  /** A block cut for an older plan was trimmed to the plan of this event. */
  | { readonly kind: 'trimmed'; readonly block: string }
  /** Glue was spread for a batch; `minutes` is the open time on the glue's sheet, 0 stops the clock. */
  | { readonly kind: 'timer'; readonly batch: string; readonly minutes: number };

/** An event the store holds. */
export interface StoredEvent extends ShopEvent {
  /** Its place in the log, 1 and up. The order in which things count. */
  readonly number: number;
  /** The server's clock when it arrived, ms. */
  readonly received: number;
  /**
   * When it happened by the server's clock: `at`, set right by the difference between the two clocks at delivery, ms.
   */
  readonly happened: number;
}

/** The last time that is taken for one, ms: the end of the year 9999 (ISO 8601 writes years with four digits). */
export const LAST_TIME = Date.UTC(10_000, 0) - 1;
/** What a name and a note may hold, letters. */
export const MOST_NAME = 60;
export const MOST_NOTE = 2000;

/** The first time that a list is believed, ms: a clock that has lost its battery shows an earlier one. */
export const FIRST_TIME = Date.UTC(2000, 0);
/** What seems to have waited longer than this to be delivered comes from a clock that was set in the meantime, ms. */
const LONGEST_WAIT = 366 * 24 * 3600_000;

/**
 * When an event happened by the server's clock. A client says what its clock shows as it delivers; the difference to
 * ours is how far its clock is off. Nothing happens after it was received; where the two clocks make no sense together,
 * it happened just then. A command, whose clock is ours, is believed as far back as {@link FIRST_TIME}.
 */
export function happenedAt(at: number, clientNow: number, serverNow: number): number {
  const waited = clientNow - at;
  if (clientNow === serverNow && at >= FIRST_TIME) return Math.min(at, serverNow);
  return waited > 0 && waited <= LONGEST_WAIT ? serverNow - waited : serverNow;
}
