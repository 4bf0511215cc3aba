import type Database from 'libsql';
import { happenedAt, LAST_TIME, type Happening, type ShopEvent, type StoredEvent } from '../event.js';
import { storedSchema } from '../eventSchema.js';
import { Damaged, rowsOf } from './rowsOf.js';
import { sealOf } from './seal.js';

/**
 * What became of one delivered event: `stored` now; `again`, it was here already; `clash`, this client's number was used before for
 * something else (its memory was lost or copied), so it is not stored and the client must number it anew.
 */
export interface Delivery {
  readonly client: string;
  readonly seq: number;
  readonly became: 'stored' | 'again' | 'clash';
}

/** A stretch of the log. */
export interface LogPart {
  /** Oldest first. */
  readonly events: readonly StoredEvent[];
  /** What was found there and makes no sense, so that nobody is shown it: which entry, and what is wrong with it. */
  readonly passedOver: readonly string[];
  /** Number of the last entry looked at, and who numbered it how: another entry in its place, and the log is another. */
  readonly last: number;
  readonly lastKey: string;
}

/** A row of the log: number, client, seq, seen, plan, at, who, via, what as JSON, received, happened. */
export type EventFields = readonly [
  number,
  string,
  number,
  number,
  number,
  number,
  string,
  string,
  string,
  number,
  number,
];

export const EVENT_COLUMNS = 'number, client, seq, seen, plan, at, who, via, what, received, happened';
/** So many rows are read at once: each is held three times while it is. */
const AT_ONCE = 4_000;

/**
 * Every event with a higher number.
 *
 * @throws {@link Damaged} where a row is not as it was written
 */
export function logAfter(db: Database.Database, number: number): LogPart {
  const reading = new Reading();
  for (;;) {
    const rows = rowsOf(db, `${EVENT_COLUMNS}, seal`, `event WHERE number > ? ORDER BY number LIMIT ${AT_ONCE}`, [
      Math.max(number, reading.last),
    ]);
    for (const row of rows) reading.take(unsealed(row));
    if (rows.length < AT_ONCE) return reading;
  }
}

/** The events that rows of the log, from wherever they were kept, come to. */
export function logPart(rows: readonly EventFields[]): LogPart {
  const reading = new Reading();
  for (const row of rows) reading.take(row);
  return reading;
}

/** A log while it is read, row by row. */
class Reading implements LogPart {
  readonly events: StoredEvent[] = [];
  readonly passedOver: string[] = [];
  private newest: EventFields | undefined;
  // The same few things happen again and again: each is read once.
  private readonly read = new Map<string, Happening | undefined>();

  get last(): number {
    return this.newest?.[0] ?? 0;
  }

  get lastKey(): string {
    return this.newest ? keyOf(this.newest) : '';
  }

  take(row: EventFields): void {
    const event = fromRow(row, this.read);
    if (typeof event === 'string') this.passedOver.push(event);
    else this.events.push(event);
    this.newest = row;
  }
}

/** Adds the events not yet in the log, in the order given. To be called within a transaction. */
export function writeEvents(
  db: Database.Database,
  events: readonly ShopEvent[],
  clientNow: number,
  serverNow: number,
): Delivery[] {
  const last = lastNumber(db);
  return events.map((event) => {
    const { client, seq } = event;
    const known = eventKeyed(db, client, seq);
    if (known) return { client, seq, became: isSame(known, event) ? 'again' : 'clash' };
    const happened = Math.round(happenedAt(event.at, clientNow, serverNow));
    // Nobody has seen what is not there yet.
    const seen = Math.min(event.seen, last);
    insertEvent(db, { ...event, seen, number: lastNumber(db) + 1, received: serverNow, happened });
    return { client, seq, became: 'stored' };
  });
}

/** Puts an event into the log under its own number. */
export function insertEvent(db: Database.Database, event: StoredEvent): void {
  const row = fieldsOf(event);
  db.prepare(`INSERT INTO event (${EVENT_COLUMNS}, seal) VALUES (?,?,?,?,?,?,?,?,?,?,?,?)`).run([...row, sealOf(row)]);
}

/** The event a client numbered so, if it is in the log. */
export function eventKeyed(db: Database.Database, client: string, seq: number): EventFields | undefined {
  const [row] = rowsOf(db, EVENT_COLUMNS, 'event WHERE client = ? AND seq = ?', [client, seq]);
  return row as unknown as EventFields | undefined;
}

export function eventNumbered(db: Database.Database, number: number): EventFields | undefined {
  return rowsOf(db, EVENT_COLUMNS, 'event WHERE number = ?', [number])[0] as unknown as EventFields | undefined;
}

/** The highest number ever given to an event, whether or not that event can still be read. */
export function lastNumber(db: Database.Database): number {
  const { seq } = db
    .prepare("SELECT max(CAST(seq AS INTEGER)) AS seq FROM sqlite_sequence WHERE name = 'event'")
    .get([]) as {
    seq: number | null;
  };
  return seq ?? 0;
}

/** Gives every row the check sum it lacks. */
export function sealEvents(db: Database.Database): void {
  const seal = db.prepare('UPDATE event SET seal = ? WHERE number = ?');
  for (let last = -1; ;) {
    const rows = rowsOf(db, EVENT_COLUMNS, `event WHERE number > ? ORDER BY number LIMIT ${AT_ONCE}`, [last]);
    if (rows.length === 0) return;
    for (const row of rows as unknown as EventFields[]) seal.run([sealOf(row), row[0]]);
    last = rows.at(-1)![0] as number;
  }
}

export function isSame(row: EventFields, event: ShopEvent): boolean {
  return row[5] === event.at && row[6] === event.who && row[8] === JSON.stringify(event.what);
}

/** What names an event for good. */
export function keyOf([, client, seq]: EventFields): string {
  return `${client} ${seq}`;
}

export function fieldsOf(event: StoredEvent): EventFields {
  const { number, client, seq, seen, plan, at, who, via, what, received, happened } = event;
  return [number, client, seq, seen, plan, at, who, via, JSON.stringify(what), received, happened];
}

function unsealed(row: readonly unknown[]): EventFields {
  const fields = row.slice(0, -1) as unknown as EventFields;
  if (sealOf(fields) !== row.at(-1)) throw new Damaged(`Entry ${String(row[0])} is not as it was written.`);
  return fields;
}

function fromRow(row: EventFields, read: Map<string, Happening | undefined>): StoredEvent | string {
  const [number, client, seq, seen, plan, at, who, via, text, received, happened] = row;
  if (!read.has(text)) read.set(text, happeningIn(text));
  const what = read.get(text);
  if (!what) return `Entry ${number} is passed over: it says nothing that can be understood (${text.slice(0, 80)}).`;
  if (!isTime(happened) || !isTime(received)) return `Entry ${number} is passed over: its time is none (${happened}).`;
  return { number, client, seq, seen, plan, at, who, via: via as ShopEvent['via'], what, received, happened };
}

function happeningIn(text: string): Happening | undefined {
  try {
    return storedSchema.safeParse(JSON.parse(text)).data;
  } catch {
    return undefined;
  }
}

function isTime(ms: number): boolean {
  return ms >= 0 && ms <= LAST_TIME;
}
