import { happenedAt, type ShopEvent, type StoredEvent } from '../log/event.js';
import { fieldsOf, isSame, type EventFields } from './eventRow.js';

/**
 * What became of one delivered event: `stored` now; `again`, it was here already; `clash`, this client's number was
 * used before for something else (its memory was lost or copied), so it is not stored and the client must number it
 * anew.
 */
export interface Delivery {
  readonly client: string;
  readonly seq: number;
  readonly became: 'stored' | 'again' | 'clash';
}

/** What is known of a log while something is added to it. */
export interface LogThere {
  /** The event that a client numbered so, if it is in the log. */
  readonly keyed: (client: string, seq: number) => EventFields | undefined;
  /** The highest number ever given to an event. */
  readonly last: number;
}

/**
 * What a delivery comes to: each event once, by the key it has had since it was made.
 *
 * @param clientNow what the client's clock shows as it delivers, ms
 * @param serverNow what ours shows, ms
 * @returns what became of each, and those to be written, in order and numbered
 */
export function delivered(
  events: readonly ShopEvent[],
  { keyed, last }: LogThere,
  clientNow: number,
  serverNow: number,
): { readonly deliveries: readonly Delivery[]; readonly stored: readonly StoredEvent[] } {
  const stored: StoredEvent[] = [];
  const fresh = new Map<string, EventFields>();
  const deliveries = events.map((event): Delivery => {
    const { client, seq } = event;
    const known = keyed(client, seq) ?? fresh.get(`${client} ${seq}`);
    if (known) return { client, seq, became: isSame(known, event) ? 'again' : 'clash' };
    const happened = Math.round(happenedAt(event.at, clientNow, serverNow));
    // Nobody has seen what is not there yet.
    const seen = Math.min(event.seen, last);
    const one = { ...event, seen, number: last + stored.length + 1, received: serverNow, happened };
    stored.push(one);
    fresh.set(`${client} ${seq}`, fieldsOf(one));
    return { client, seq, became: 'stored' };
  });
  return { deliveries, stored };
}
