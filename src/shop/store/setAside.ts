import Database from 'libsql';
import { copyFileSync, existsSync, readdirSync, renameSync, rmSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { readSetting, writeSetting } from './setting.js';

/** SQLite keeps the newest writes in a second file beside the first; they belong together (sqlite.org/wal.html). */
const COMPANIONS = ['', '-wal', '-shm'];
const TABLES = ['event', 'plan', 'photo', 'session', 'setting'];

/**
 * Renames a damaged tracker file, with its companions, so that nothing writes to it any more: `….damaged-20260314-091500`.
 *
 * @returns the new path
 */
export function setAside(path: string, now: Date): string {
  const stamp = now.toISOString().replace(/[-:]/g, '').replace('T', '-').slice(0, 15);
  let aside = `${path}.damaged-${stamp}`;
  for (let again = 2; existsSync(aside); again++) aside = `${path}.damaged-${stamp}-${again}`;
  for (const companion of COMPANIONS) {
    if (existsSync(path + companion)) renameSync(path + companion, aside + companion);
  }
  return aside;
}

/** The files that were once put aside here and whose rows have not been taken over yet, the newest first. */
export function notYetSalvaged(path: string, db: Database.Database): readonly string[] {
  const start = `${basename(path)}.damaged-`;
  return readdirSync(dirname(path))
    .filter((name) => name.startsWith(start) && !/-(wal|shm)$|\.reading$/.test(name))
    .filter((name) => readSetting(db, `salvaged ${name}`) === undefined)
    .sort()
    .reverse()
    .map((name) => join(dirname(path), name));
}

/**
 * Copies every row that can still be read from a damaged file into a new one: all at once, or after a crash another time. The damaged
 * file is read through a copy, so that it stays as it was found.
 *
 * @returns how many events were saved
 */
export function salvage(damaged: string, into: Database.Database): number {
  const copy = `${damaged}.reading`;
  for (const companion of COMPANIONS) {
    if (existsSync(damaged + companion)) copyFileSync(damaged + companion, copy + companion);
  }
  into.exec('BEGIN IMMEDIATE');
  try {
    const events = copyRows(copy, into);
    writeSetting(into, `salvaged ${basename(damaged)}`, String(events));
    into.exec('COMMIT');
    return events;
  } catch (error) {
    into.exec('ROLLBACK');
    throw error;
  } finally {
    for (const companion of COMPANIONS) rmSync(copy + companion, { force: true });
  }
}

function copyRows(copy: string, into: Database.Database): number {
  let from: Database.Database;
  try {
    from = new Database(copy);
  } catch {
    return 0;
  }
  let events = 0;
  for (const table of TABLES) {
    const columns = columnsOf(into, table);
    const names = columns.join(', ');
    const insert = into.prepare(
      `INSERT OR IGNORE INTO ${table} (${names}) VALUES (${columns.map(() => '?').join(', ')})`,
    );
    for (const row of readableRows(from, table, names)) {
      if (!isWhole(table, row)) continue;
      const { changes } = insert.run(columns.map((column) => row[column]));
      if (table === 'event') events += changes;
    }
  }
  from.close();
  return events;
}

/** Whether a row still has the shape of its table: damage can leave a row readable and wrong. */
function isWhole(table: string, row: Record<string, unknown>): boolean {
  if (Object.values(row).some((value) => value === null || value === undefined)) return false;
  try {
    if (table === 'event') JSON.parse(String(row.what));
    if (table === 'plan') JSON.parse(String(row.blocks));
    return true;
  } catch {
    return false;
  }
}

/** The rows that can be read. A damaged page stops the reading; what lies behind it is reached from the other end. */
function* readableRows(db: Database.Database, table: string, names: string): Generator<Record<string, unknown>> {
  let reached = Number.MIN_SAFE_INTEGER;
  for (const row of walk(
    db,
    `SELECT rowid AS here, ${names} FROM ${table} WHERE rowid > ? ORDER BY rowid LIMIT 1`,
    reached,
  )) {
    reached = row.here as number;
    yield row;
  }
  const back = `SELECT rowid AS here, ${names} FROM ${table} WHERE rowid < ? ORDER BY rowid DESC LIMIT 1`;
  for (const row of walk(db, back, Number.MAX_SAFE_INTEGER)) {
    if ((row.here as number) <= reached) return;
    yield row;
  }
}

/** Row by row, for the library reads a hundred at a time and gives none of them where one cannot be read. */
function* walk(db: Database.Database, query: string, from: number): Generator<Record<string, unknown>> {
  try {
    const next = db.prepare(query);
    for (let row = next.get([from]); row !== undefined; row = next.get([(row as { here: number }).here])) {
      yield row as Record<string, unknown>;
    }
  } catch {
    return;
  }
}

function columnsOf(db: Database.Database, table: string): string[] {
  return db
    .prepare(`SELECT name FROM pragma_table_info('${table}')`)
    .all([])
    .map((row) => (row as { name: string }).name);
}
