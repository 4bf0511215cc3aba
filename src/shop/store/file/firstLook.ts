import { closeSync, openSync, readSync, statSync } from 'node:fs';
import { PAGE, readPages, rowsOn, textIn } from './pages.js';
import { APPLICATION_ID, schemaLine, schemas } from './schema.js';

/** What a file that calls itself a tracker turns out to be. */
export type FileState = 'empty' | 'current' | 'older' | 'newer' | 'foreign' | 'damaged';

/**
 * Looks at a file without SQLite, which is only let near what looks as it should: its heading and its list of tables
 * (sqlite.org/fileformat2.html, sections 1.3 and 2.6).
 */
export function firstLook(path: string, known: readonly ReadonlySet<string>[] = schemas()): FileState {
  if (sizeOf(path) === 0) return 'empty';
  const page = firstPage(path);
  if (page === undefined) return 'empty';
  if (page.length < PAGE || !page.subarray(0, 16).equals(MAGIC)) return 'damaged';
  const [isOurs, version] = [page.readUInt32BE(68) === APPLICATION_ID, page.readUInt32BE(60)];
  const rows = rowsOn(1, [page]).map(({ cells }) => [cells[0], cells[1], cells[4]].map((cell) => textIn(cell)));
  const lines = new Set(rows.map(schemaLine));
  const like = known.findIndex((schema) => schema.size === lines.size && [...schema].every((line) => lines.has(line)));
  if (like >= 0 && isOurs) {
    if (version !== like || !isUsual(page)) return 'damaged';
    return version < known.length - 1 ? 'older' : 'current';
  }
  if (isOurs) return version > known.length - 1 && rows.length > 0 ? 'newer' : 'damaged';
  const hasOurs = known.some((schema) => [...schema].some((line) => line.startsWith('t') && lines.has(line)));
  if (hasOurs) return 'damaged';
  if (rows.length > 0 || page[FILE_HEAD] === TABLE_INTERIOR) return 'foreign';
  return isUsual(page) && page[FILE_HEAD] === TABLE_LEAF && page.readUInt16BE(FILE_HEAD + 3) === 0
    ? 'empty'
    : 'damaged';
}

const MAGIC = Buffer.from('SQLite format 3\0');
const FILE_HEAD = 100;
const TABLE_LEAF = 0x0d;
const TABLE_INTERIOR = 0x05;

/**
 * The page size, room kept at its end, the fractions that are always so, and the letters (UTF-8) that our files have.
 */
function isUsual(page: Buffer): boolean {
  const letters = page.readUInt32BE(56);
  const [write, read] = [page[18]!, page[19]!];
  return (
    page.readUInt16BE(16) === PAGE &&
    write === read &&
    (write === 1 || write === 2) &&
    page.subarray(20, 24).equals(Buffer.from([0, 64, 32, 32])) &&
    [0, 4].includes(page.readUInt32BE(44)) &&
    letters <= 1
  );
}

/** Bytes of a file, 0 where there is none. */
export function sizeOf(path: string): number {
  return statSync(path, { throwIfNoEntry: false })?.size ?? 0;
}

/** Nothing where the first change of a new file was cut off. */
function firstPage(path: string): Buffer | undefined {
  if (['-wal', '-journal'].some((end) => sizeOf(path + end) > 0)) return readPages(path)[0];
  const file = openSync(path, 'r');
  try {
    const page = Buffer.alloc(PAGE);
    return page.subarray(0, readSync(file, page, 0, PAGE, 0));
  } finally {
    closeSync(file);
  }
}
