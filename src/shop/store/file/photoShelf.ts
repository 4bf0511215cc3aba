import type Database from 'libsql';
import { photoName, type Photo, type PhotoType } from '../photo.js';
import { rowsOf } from './rowsOf.js';

/** Keeps a photo under its name, so that the same one sent twice is one. To be called within a transaction. */
export function writePhoto(
  db: Database.Database,
  { type, bytes }: Photo,
  now: number,
): { readonly name: string; readonly isNew: boolean } {
  const name = photoName(bytes);
  const { changes } = db
    .prepare('INSERT OR IGNORE INTO photo (name, type, bytes, received) VALUES (?, ?, ?, ?)')
    .run([name, type, Buffer.from(bytes), now]);
  return { name, isNew: changes > 0 };
}

/** A photo, if it is there and as it was written. */
export function photoNamed(db: Database.Database, name: string): Photo | undefined {
  const row = db.prepare('SELECT CAST(type AS BLOB) AS type, bytes FROM photo WHERE name = ?').get([name]);
  if (row === undefined) return undefined;
  const { type, bytes } = row as { type: Buffer; bytes: Buffer };
  return photoName(bytes) === name ? { type: type.toString() as PhotoType, bytes } : undefined;
}

/** The names of all photos, with when each came. */
export function photoNames(db: Database.Database): readonly (readonly [name: string, received: number])[] {
  return rowsOf(db, 'name, received', 'photo ORDER BY received, name') as unknown as [string, number][];
}
