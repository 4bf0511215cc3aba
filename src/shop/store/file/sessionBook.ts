import type Database from 'libsql';
import { hashOf, SESSION_LASTS } from '../session.js';
import { rowsOf } from './rowsOf.js';

/** Sessions outlive the server, so that a phone can deliver after a restart. Only a hash of the token is kept. */
export function writeSession(db: Database.Database, token: string, now: number): void {
  db.prepare('DELETE FROM session WHERE used < ?').run([now - SESSION_LASTS]);
  db.prepare('INSERT INTO session (hash, began, used) VALUES (?, ?, ?)').run([hashOf(token), now, now]);
}

/** Adds a session as another tracker knew it. */
export function writeSessionRow(
  db: Database.Database,
  row: readonly [hash: string, began: number, used: number],
): void {
  db.prepare('INSERT OR IGNORE INTO session (hash, began, used) VALUES (?, ?, ?)').run([...row]);
}

/** All sessions: hash, when each began, when it was last used. */
export function allSessions(db: Database.Database): [string, number, number][] {
  return rowsOf(db, 'hash, began, used', 'session') as [string, number, number][];
}

export function isSession(db: Database.Database, token: string, now: number): boolean {
  const row = db.prepare('SELECT CAST(used AS INTEGER) AS used FROM session WHERE hash = ?').get([hashOf(token)]) as
    { used: number } | undefined;
  if (row === undefined || row.used < now - SESSION_LASTS) return false;
  if (row.used < now - SESSION_LASTS / 100) keepAlive(db, token, now);
  return true;
}

export function dropSessions(db: Database.Database): number {
  return db.prepare('DELETE FROM session').run([]).changes;
}

/** Best effort: a full or busy disk must not shut a phone out. */
function keepAlive(db: Database.Database, token: string, now: number): void {
  try {
    db.prepare('UPDATE session SET used = ? WHERE hash = ?').run([now, hashOf(token)]);
  } catch {
    return;
  }
}
