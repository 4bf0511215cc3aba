import type Database from 'libsql';
import type { ShopEvent, StoredEvent } from '../../log/event.js';
import { delivered, type Delivery } from '../delivered.js';
import { EVENT_COLUMNS, fieldsOf, Reading, type EventFields, type LogPart } from '../eventRow.js';
import { Damaged, rowsOf } from './rowsOf.js';
import { sealOf } from './seal.js';

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

/** Adds the events not yet in the log, in the order given. To be called within a transaction. */
export function writeEvents(
  db: Database.Database,
  events: readonly ShopEvent[],
  clientNow: number,
  serverNow: number,
): readonly Delivery[] {
  const there = { keyed: (client: string, seq: number) => eventKeyed(db, client, seq), last: lastNumber(db) };
  const { deliveries, stored } = delivered(events, there, clientNow, serverNow);
  for (const event of stored) insertEvent(db, event);
  return deliveries;
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

function unsealed(row: readonly unknown[]): EventFields {
  const fields = row.slice(0, -1) as unknown as EventFields;
  if (sealOf(fields) !== row.at(-1)) throw new Damaged(`Entry ${String(row[0])} is not as it was written.`);
  return fields;
}
