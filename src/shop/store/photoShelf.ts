import type Database from 'libsql';
import { createHash } from 'node:crypto';
import { rowsOf } from './rowsOf.js';

export interface Photo {
  readonly type: PhotoType;
  readonly bytes: Uint8Array;
}

export type PhotoType = 'image/jpeg' | 'image/png' | 'image/webp';

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

/** A photo is called by the SHA-256 of its bytes. */
export function photoName(bytes: Uint8Array): string {
  return createHash('sha256').update(bytes).digest('hex');
}

/** What a file is by its first bytes, whatever it calls itself: JPEG (ITU-T T.81, B.1.1.3), PNG (ISO/IEC 15948, 5.2), WebP (RFC 9649, 2.4). */
export function photoTypeOf(bytes: Uint8Array): PhotoType | undefined {
  const starts = (at: number, ...values: number[]) => values.every((value, i) => bytes[at + i] === value);
  if (starts(0, 0xff, 0xd8, 0xff)) return 'image/jpeg';
  if (starts(0, 0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a)) return 'image/png';
  if (starts(0, 0x52, 0x49, 0x46, 0x46) && starts(8, 0x57, 0x45, 0x42, 0x50)) return 'image/webp';
  return undefined;
}
