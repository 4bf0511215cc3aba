import type Database from 'libsql';
import { rowsOf } from './rowsOf.js';
import { sealOf } from './seal.js';

/** Small things the tracker remembers from one start to the next: the port and address the phones know it by. */
export function readSetting(db: Database.Database, name: string): string | undefined {
  const [row] = rowsOf(db, 'name, value, seal', 'setting WHERE name = ?', [name]) as [string, string, number][];
  // A setting that was damaged is one that was never made.
  return row && sealOf(row.slice(0, 2) as string[]) === row[2] ? row[1] : undefined;
}

export function writeSetting(db: Database.Database, name: string, value: string): void {
  db.prepare('INSERT OR REPLACE INTO setting (name, value, seal) VALUES (?, ?, ?)').run([
    name,
    value,
    sealOf([name, value]),
  ]);
}

/** Gives every row the check sum it lacks. */
export function sealSettings(db: Database.Database): void {
  for (const [name, value] of rowsOf(db, 'name, value', 'setting') as [string, string][]) writeSetting(db, name, value);
}
