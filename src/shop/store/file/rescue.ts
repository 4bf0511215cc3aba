import Database from 'libsql';
import { closeSync, openSync, rmSync } from 'node:fs';
import { takePlace } from '../../../disk/replace.js';
import { migrate } from './schema.js';
import { nameBeside } from './setAside.js';
import type { Content } from '../content.js';
import { takeOver } from './takeOver.js';

/**
 * Writes everything a tracker held into a file beside its place, whole or not at all; the next start takes it over from
 * there.
 *
 * @returns the path
 */
export function writeRescue(path: string, content: Content): string {
  const draft = `${path}.${process.pid}.reading`;
  try {
    closeSync(openSync(draft, 'w', OWNER_ONLY));
    const db = new Database(draft);
    db.exec('PRAGMA journal_mode = MEMORY');
    db.exec('PRAGMA synchronous = FULL');
    migrate(db);
    db.exec('BEGIN');
    takeOver(db, content);
    db.exec('COMMIT');
    db.close();
    const name = nameBeside(path, 'rescued', new Date());
    takePlace(draft, name);
    return name;
  } finally {
    rmSync(draft, { force: true });
  }
}

/** What was recorded is nobody's but the owner's (rw-------). */
export const OWNER_ONLY = 0o600;
