import { isUtf8 } from 'node:buffer';
import type Database from 'libsql';

/** A row that disagrees with its check sum, or bytes that are no text. */
export class Damaged extends Error {}

/**
 * The rows of a query as arrays. SQLite hands them over as the bytes of one JSON text: the library would end the
 * program at a text that is not UTF-8, and is slow row by row.
 *
 * @param columns what of each row, as SQL
 * @param from where from, with its order and conditions
 * @throws {@link Damaged} where the bytes are no text
 */
export function rowsOf(db: Database.Database, columns: string, from: string, given: unknown[] = []): unknown[][] {
  const { rows } = db
    .prepare(`SELECT CAST(json_group_array(json_array(${columns})) AS BLOB) AS rows FROM (SELECT * FROM ${from})`)
    .get(given) as { rows: Buffer };
  try {
    if (isUtf8(rows)) return JSON.parse(rows.toString()) as unknown[][];
  } catch {
    // Whole letters, but no rows.
  }
  throw new Damaged('Some entries are no text any more.');
}
