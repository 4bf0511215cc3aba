import type Database from 'libsql';

/** Marks the file as ours: `CwTr` in ASCII (PRAGMA application_id). */
export const APPLICATION_ID = 0x43775472;

/** Each entry takes the file one version up; the version is the number of entries applied (PRAGMA user_version). Only ever add. */
export const MIGRATIONS: readonly string[] = [
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
];

/** What a file that calls itself a tracker turns out to be. */
export type FileState = 'empty' | 'current' | 'older' | 'newer' | 'foreign';

/** Looks at an open file without changing it. */
export function fileState(db: Database.Database, migrations: readonly string[] = MIGRATIONS): FileState {
  const application = number(db, 'PRAGMA application_id', 'application_id');
  const version = number(db, 'PRAGMA user_version', 'user_version');
  if (application !== APPLICATION_ID) {
    return number(db, 'SELECT count(*) AS tables FROM sqlite_schema', 'tables') === 0 ? 'empty' : 'foreign';
  }
  if (version > migrations.length) return 'newer';
  return version < migrations.length ? 'older' : 'current';
}

/** Brings an open file up to date, all of it or nothing. Rows already there are kept. */
export function migrate(db: Database.Database, migrations: readonly string[] = MIGRATIONS): void {
  db.exec('BEGIN IMMEDIATE');
  try {
    const version = number(db, 'PRAGMA user_version', 'user_version');
    for (const migration of migrations.slice(version)) db.exec(migration);
    db.exec(`PRAGMA application_id = ${APPLICATION_ID}`);
    db.exec(`PRAGMA user_version = ${migrations.length}`);
    db.exec('COMMIT');
  } catch (error) {
    if (db.inTransaction) db.exec('ROLLBACK');
    throw error;
  }
}

function number(db: Database.Database, query: string, column: string): number {
  return (db.prepare(query).get([]) as Record<string, number>)[column]!;
}
