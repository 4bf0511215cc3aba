import type Database from 'libsql';

/** Small things the tracker remembers from one start to the next: the port and address the phones know it by. */
export function readSetting(db: Database.Database, name: string): string | undefined {
  const row = db.prepare('SELECT value FROM setting WHERE name = ?').get([name]);
  return (row as { value: string } | undefined)?.value;
}

export function writeSetting(db: Database.Database, name: string, value: string): void {
  db.prepare(
    'INSERT INTO setting (name, value) VALUES (?, ?) ON CONFLICT (name) DO UPDATE SET value = excluded.value',
  ).run([name, value]);
}
