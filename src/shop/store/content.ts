import type { StoredEvent } from '../log/event.js';
import type { Photo } from './photo.js';
import type { PlanRecord } from './planRecord.js';

/** What one tracker holds, to be taken over by another. */
export interface Content {
  readonly events: readonly StoredEvent[];
  readonly plans: readonly PlanRecord[];
  readonly photos: readonly (Photo & { readonly received: number })[];
  readonly sessions: readonly (readonly [hash: string, began: number, used: number])[];
  readonly settings: readonly (readonly [name: string, value: string])[];
  /** The highest number that was ever given to an event, as far as it is known. */
  readonly highest: number;
}

/** How much of a tracker was new to the one that took it over. */
export interface TakenOver {
  readonly events: number;
  readonly photos: number;
  /** Numbers given to events of which nothing is left. */
  readonly missing: readonly number[];
}
