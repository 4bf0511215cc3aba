import type Database from 'libsql';
import { happenedAt, type Happening, type ShopEvent, type StoredEvent } from '../event.js';

/**
 * What became of one delivered event: `stored` now; `again`, it was here already; `clash`, this client's number was used before for
 * something else (its memory was lost or copied), so it is not stored and the client must number it anew.
 */
export interface Delivery {
  readonly client: string;
  readonly seq: number;
  readonly became: 'stored' | 'again' | 'clash';
}

interface EventRow {
  readonly number: number;
  readonly client: string;
  readonly seq: number;
  readonly seen: number;
  readonly plan: number;
  readonly at: number;
  readonly who: string;
  readonly via: ShopEvent['via'];
  readonly what: string;
  readonly received: number;
  readonly happened: number;
}

/** Every event with a higher number, oldest first. */
export function eventsAfter(db: Database.Database, number: number): StoredEvent[] {
  const rows = db.prepare('SELECT * FROM event WHERE number > ? ORDER BY number').raw(true).all([number]);
  // The same few things happen again and again: each is read once.
  const read = new Map<string, Happening>();
  return rows.map((row) => fromRow(row as readonly unknown[], read));
}

/** Adds the events not yet in the log, in the order given. To be called within a transaction. */
export function writeEvents(
  db: Database.Database,
  events: readonly ShopEvent[],
  clientNow: number,
  serverNow: number,
): Delivery[] {
  const find = db.prepare('SELECT * FROM event WHERE client = ? AND seq = ?');
  const insert = db.prepare(
    'INSERT INTO event (client, seq, seen, plan, at, who, via, what, received, happened) VALUES (?,?,?,?,?,?,?,?,?,?)',
  );
  return events.map((event) => {
    const { client, seq, seen, plan, at, who, via } = event;
    const what = JSON.stringify(event.what);
    const known = find.get([client, seq]) as EventRow | undefined;
    if (known) return { client, seq, became: isSame(known, event, what) ? 'again' : 'clash' };
    const happened = Math.round(happenedAt(at, clientNow, serverNow));
    insert.run([client, seq, seen, plan, at, who, via, what, serverNow, happened]);
    return { client, seq, became: 'stored' };
  });
}

function isSame(row: EventRow, event: ShopEvent, what: string): boolean {
  return row.at === event.at && row.who === event.who && row.what === what;
}

function fromRow(row: readonly unknown[], read: Map<string, Happening>): StoredEvent {
  const [number, client, seq, seen, plan, at, who, via, written, received, happened] = row;
  let what = read.get(written as string);
  if (!what) {
    what = JSON.parse(written as string) as Happening;
    read.set(written as string, what);
  }
  return { number, client, seq, seen, plan, at, who, via, what, received, happened } as StoredEvent;
}
