import Database from 'libsql';
import { sealEvents } from './eventLog.js';
import { sealPlans } from './planLog.js';
import { sealSettings } from './setting.js';

/** Marks the file as ours: `CwTr` in ASCII (PRAGMA application_id). */
export const APPLICATION_ID = 0x43775472;

type Migration = string | ((db: Database.Database) => void);

/**
 * Each entry takes the file one version up; the version is the number of entries applied (PRAGMA user_version). Only
 * ever add.
 */
export const MIGRATIONS: readonly Migration[] = [
  `
  CREATE TABLE event (
    number   INTEGER PRIMARY KEY AUTOINCREMENT,
    client   TEXT    NOT NULL,
    seq      INTEGER NOT NULL,
    seen     INTEGER NOT NULL,
    plan     INTEGER NOT NULL,
    at       INTEGER NOT NULL,
    who      TEXT    NOT NULL,
    via      TEXT    NOT NULL,
    what     TEXT    NOT NULL,
    received INTEGER NOT NULL,
    happened INTEGER NOT NULL,
    UNIQUE (client, seq)
  ) STRICT;
  CREATE TRIGGER event_is_kept BEFORE DELETE ON event BEGIN SELECT RAISE(ABORT, 'events are only ever added'); END;
  CREATE TRIGGER event_is_final BEFORE UPDATE ON event BEGIN SELECT RAISE(ABORT, 'events are only ever added'); END;
  CREATE TABLE plan (
    number   INTEGER PRIMARY KEY AUTOINCREMENT,
    recorded INTEGER NOT NULL,
    job      TEXT    NOT NULL,
    blocks   TEXT    NOT NULL
  ) STRICT;
  CREATE TABLE photo (
    name     TEXT    PRIMARY KEY,
    type     TEXT    NOT NULL,
    bytes    BLOB    NOT NULL,
    received INTEGER NOT NULL
  ) STRICT;
  CREATE TABLE session (
    hash  TEXT    PRIMARY KEY,
    began INTEGER NOT NULL,
    used  INTEGER NOT NULL
  ) STRICT;
  CREATE TABLE setting (
    name  TEXT PRIMARY KEY,
    value TEXT NOT NULL
  ) STRICT;
  `,
  // Rows get a check sum: damage may leave a row readable and wrong.
  (db) => {
    for (const table of ['event', 'plan', 'setting'])
      db.exec(`ALTER TABLE ${table} ADD COLUMN seal INTEGER NOT NULL DEFAULT 0`);
    db.exec('DROP TRIGGER event_is_final');
    sealEvents(db);
    sealPlans(db);
    sealSettings(db);
    db.exec(
      "CREATE TRIGGER event_is_final BEFORE UPDATE ON event BEGIN SELECT RAISE(ABORT, 'events are only ever added'); END",
    );
  },
];

/** What SQLite notes in a file of each version: type, name and text of everything in it, version 0 first. */
export function schemas(migrations: readonly Migration[] = MIGRATIONS): readonly ReadonlySet<string>[] {
  const db = new Database(':memory:');
  const noted = [new Set<string>()];
  for (const migration of migrations) {
    apply(db, migration);
    const rows = db.prepare('SELECT type, name, sql FROM sqlite_schema').raw(true).all([]) as string[][];
    noted.push(new Set(rows.map(schemaLine)));
  }
  db.close();
  return noted;
}

/** One thing of a schema: what it is, its name, and how it was made (nothing for what SQLite makes itself). */
export function schemaLine([type, name, sql]: readonly (string | null | undefined)[]): string {
  return `${type} ${name} ${sql ?? ''}`;
}

/** Brings an open file up to date, all of it or nothing. Rows already there are kept. */
export function migrate(db: Database.Database, migrations: readonly Migration[] = MIGRATIONS): void {
  db.exec('BEGIN IMMEDIATE');
  try {
    const { user_version: version } = db.prepare('PRAGMA user_version').get([]) as { user_version: number };
    for (const migration of migrations.slice(version)) apply(db, migration);
    db.exec(`PRAGMA application_id = ${APPLICATION_ID}`);
    db.exec(`PRAGMA user_version = ${Math.max(version, migrations.length)}`);
    db.exec('COMMIT');
  } catch (error) {
    if (db.inTransaction) db.exec('ROLLBACK');
    throw error;
  }
}

function apply(db: Database.Database, migration: Migration): void {
  if (typeof migration === 'string') db.exec(migration);
  else migration(db);
}
