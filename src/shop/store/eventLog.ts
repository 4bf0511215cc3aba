import type Database from 'libsql';
import { happenedAt, LAST_TIME, type Happening, type ShopEvent, type StoredEvent } from '../event.js';
import { storedSchema } from '../eventSchema.js';

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

/** A stretch of the log. */
export interface LogPart {
  /** Oldest first. */
  readonly events: readonly StoredEvent[];
  /** What was found there and makes no sense, so that nobody is shown it: which entry, and what is wrong with it. */
  readonly passedOver: readonly string[];
  /** Number of the last entry looked at. */
  readonly last: number;
}

/** Every event with a higher number. */
export function logAfter(db: Database.Database, number: number): LogPart {
  const rows = db.prepare('SELECT * FROM event WHERE number > ? ORDER BY number').raw(true).all([number]);
  // The same few things happen again and again: each is read once.
  const read = new Map<string, Happening | undefined>();
  const events: StoredEvent[] = [];
  const passedOver: string[] = [];
  let last = number;
  for (const row of rows) {
    const event = fromRow(row as readonly unknown[], read);
    last = (row as readonly number[])[0]!;
    if (typeof event === 'string') passedOver.push(event);
    else events.push(event);
  }
  return { events, passedOver, last };
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

function fromRow(row: readonly unknown[], read: Map<string, Happening | undefined>): StoredEvent | string {
  const [number, client, seq, seen, plan, at, who, via, written, received, happened] = row;
  const text = written as string;
  if (!read.has(text)) read.set(text, happeningIn(text));
  const what = read.get(text);
  if (!what)
    return `Entry ${String(number)} is passed over: it says nothing that can be understood (${text.slice(0, 80)}).`;
  if (!isTime(happened) || !isTime(received))
    return `Entry ${String(number)} is passed over: its time is none (${String(happened)}).`;
  return { number, client, seq, seen, plan, at, who, via, what, received, happened } as StoredEvent;
}

function happeningIn(text: string): Happening | undefined {
  try {
    return storedSchema.safeParse(JSON.parse(text)).data;
  } catch {
    return undefined;
  }
}

function isTime(ms: unknown): boolean {
  return typeof ms === 'number' && ms >= 0 && ms <= LAST_TIME;
}
