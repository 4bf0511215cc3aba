import { existsSync, readFileSync } from 'node:fs';

/** Our files have SQLite's usual page size, bytes. */
export const PAGE = 4096;

/** A value in a row as SQLite stores it: a number, the bytes of a text, or the bytes of a blob. */
export type Cell = null | number | { readonly text: Buffer } | { readonly blob: Buffer };

export interface RawRow {
  readonly rowid: number;
  readonly cells: readonly Cell[];
}

/** The pages of a tracker file as they lie on the disk, number 1 first. */
export type Pages = readonly Buffer[];

/**
 * Reads a file's pages without SQLite, which may take offence at damage in ways that end the program. A change that was
 * cut off is taken back as the journal beside the file says; where an older version left a write-ahead log, what was
 * committed there counts (sqlite.org/fileformat2.html, sections 3 and 4).
 *
 * @throws the system's error where the file cannot be read at all
 */
export function readPages(path: string): Pages {
  const bytes = readFileSync(path);
  const pages: Buffer[] = [];
  for (let at = 0; at < bytes.length; at += PAGE) pages.push(bytes.subarray(at, at + PAGE));
  const [journal, log] = [`${path}-journal`, `${path}-wal`];
  if (existsSync(journal)) takeBack(readFileSync(journal), pages);
  if (existsSync(log)) for (const [number, page] of committedIn(readFileSync(log))) pages[number - 1] = page;
  return Array.from(pages, (page) => page ?? Buffer.alloc(0));
}

/**
 * The rows that can be read on one page, if it is a leaf of a table; a row that cannot be read is left out (section
 * 1.6).
 */
export function rowsOn(number: number, pages: Pages): readonly RawRow[] {
  const page = pages[number - 1]!;
  const head = number === 1 ? FILE_HEAD : 0;
  if (page[head] !== TABLE_LEAF || page.length < head + LEAF_HEAD) return [];
  const count = page.readUInt16BE(head + 3);
  const rows: RawRow[] = [];
  for (let i = 0; i < count && head + LEAF_HEAD + 2 * i + 2 <= page.length; i++) {
    try {
      rows.push(rowAt(page, page.readUInt16BE(head + LEAF_HEAD + 2 * i), pages));
    } catch (error) {
      if (!(error instanceof Unreadable || error instanceof RangeError)) throw error;
    }
  }
  return rows;
}

/** The text of a cell, where it is one and its bytes are UTF-8. */
export function textIn(cell: Cell | undefined): string | undefined {
  if (cell === null || typeof cell !== 'object' || !('text' in cell)) return undefined;
  try {
    return UTF8.decode(cell.text);
  } catch {
    return undefined;
  }
}

const UTF8 = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true });
const FILE_HEAD = 100;
const LEAF_HEAD = 8;
const TABLE_LEAF = 0x0d;
const JOURNAL_MAGIC = Buffer.from('d9d505f920a163d7', 'hex');
const JOURNAL_HEAD = 28;
const LOG_HEAD = 32;
const FRAME_HEAD = 24;

class Unreadable extends Error {}

function rowAt(page: Buffer, at: number, pages: Pages): RawRow {
  const [length, afterLength] = varint(page, at);
  const [rowid, start] = varint(page, afterLength);
  return { rowid, cells: cellsIn(payloadAt(page, start, length, pages)) };
}

/** What of a long row does not fit its page lies on a chain of others (section 1.5, "cell payload overflow"). */
function payloadAt(page: Buffer, start: number, length: number, pages: Pages): Buffer {
  const most = PAGE - 35;
  if (length <= most) return sliceOf(page, start, length);
  const least = Math.floor(((PAGE - 12) * 32) / 255) - 23;
  const even = least + ((length - least) % (PAGE - 4));
  const here = even <= most ? even : least;
  const parts = [sliceOf(page, start, here)];
  let next = sliceOf(page, start + here, 4).readUInt32BE();
  for (let left = length - here; left > 0; left -= PAGE - 4) {
    const more = pages[next - 1];
    if (!more || parts.length > pages.length) throw new Unreadable();
    parts.push(sliceOf(more, 4, Math.min(left, PAGE - 4)));
    next = more.readUInt32BE(0);
  }
  return Buffer.concat(parts);
}

/** The record format (section 2.1). */
function cellsIn(payload: Buffer): Cell[] {
  const [headLength, afterLength] = varint(payload, 0);
  if (headLength > payload.length) throw new Unreadable();
  const cells: Cell[] = [];
  let body = headLength;
  for (let at = afterLength; at < headLength;) {
    const [type, next] = varint(payload, at);
    at = next;
    const length = lengthOf(type);
    cells.push(cellOf(type, sliceOf(payload, body, length)));
    body += length;
  }
  return cells;
}

function lengthOf(type: number): number {
  if (type >= 12) return Math.floor((type - 12) / 2);
  const length = [0, 1, 2, 3, 4, 6, 8, 8, 0, 0][type];
  if (length === undefined) throw new Unreadable();
  return length;
}

function cellOf(type: number, bytes: Buffer): Cell {
  if (type >= 12) return type % 2 === 0 ? { blob: bytes } : { text: bytes };
  if (type === 0) return null;
  if (type === 7) return bytes.readDoubleBE();
  if (type === 6) return Number(bytes.readBigInt64BE());
  return type >= 8 ? type - 8 : bytes.readIntBE(0, bytes.length);
}

/** A number of one to nine bytes, seven bits in each (section 1.6). */
function varint(bytes: Buffer, at: number): readonly [value: number, next: number] {
  let value = 0n;
  for (let i = 0; i < 9; i++) {
    const byte = bytes[at + i];
    if (byte === undefined) throw new Unreadable();
    if (i === 8) return [Number(BigInt.asIntN(64, (value << 8n) | BigInt(byte))), at + 9];
    value = (value << 7n) | BigInt(byte & 0x7f);
    if (byte < 0x80) return [Number(value), at + i + 1];
  }
  throw new Unreadable();
}

function sliceOf(bytes: Buffer, start: number, length: number): Buffer {
  if (length < 0 || start + length > bytes.length) throw new Unreadable();
  return bytes.subarray(start, start + length);
}

/** Puts the pages back as they were before the change that a rollback journal belongs to (section 3). */
function takeBack(journal: Buffer, pages: Buffer[]): void {
  let before = -1;
  for (let at = 0; at + JOURNAL_HEAD <= journal.length;) {
    if (!journal.subarray(at, at + 8).equals(JOURNAL_MAGIC)) break;
    const [records, nonce, size, sector] = [8, 12, 16, 20].map((field) => journal.readUInt32BE(at + field)) as [
      number,
      number,
      number,
      number,
    ];
    if (sector < JOURNAL_HEAD) break;
    if (before < 0) before = size;
    at += sector;
    for (let i = 0; i < records && at + 8 + PAGE <= journal.length; i++, at += 8 + PAGE) {
      const page = journal.subarray(at + 4, at + 4 + PAGE);
      if (journal.readUInt32BE(at + 4 + PAGE) !== journalSum(nonce, page)) break;
      pages[journal.readUInt32BE(at) - 1] = page;
    }
    at = Math.ceil(at / sector) * sector;
  }
  if (before >= 0) pages.length = Math.min(pages.length, before);
}

function journalSum(nonce: number, page: Buffer): number {
  let sum = nonce;
  for (let i = PAGE - 200; i > 0; i -= 200) sum += page[i]!;
  return sum >>> 0;
}

/**
 * The newest committed version of each page in a write-ahead log, up to the first frame that is not whole (sections 4.1
 * to 4.3).
 */
function committedIn(log: Buffer): ReadonlyMap<number, Buffer> {
  const committed = new Map<number, Buffer>();
  if (log.length < LOG_HEAD || log.readUInt32BE(8) !== PAGE) return committed;
  const bigEnd = (log.readUInt32BE(0) & 1) === 1;
  let sum = summed(log.subarray(0, 24), [0, 0], bigEnd);
  let waiting = new Map<number, Buffer>();
  for (let at = LOG_HEAD; at + FRAME_HEAD + PAGE <= log.length; at += FRAME_HEAD + PAGE) {
    const head = log.subarray(at, at + FRAME_HEAD);
    const page = log.subarray(at + FRAME_HEAD, at + FRAME_HEAD + PAGE);
    sum = summed(page, summed(head.subarray(0, 8), sum, bigEnd), bigEnd);
    const isOurs = head.compare(log, 16, 24, 8, 16) === 0;
    if (!isOurs || head.readUInt32BE(16) !== sum[0] || head.readUInt32BE(20) !== sum[1]) break;
    waiting.set(head.readUInt32BE(0), page);
    if (head.readUInt32BE(4) === 0) continue;
    for (const [number, newest] of waiting) committed.set(number, newest);
    waiting = new Map();
  }
  return committed;
}

function summed(bytes: Buffer, [a, b]: readonly [number, number], bigEnd: boolean): readonly [number, number] {
  for (let at = 0; at < bytes.length; at += 8) {
    a = (a + (bigEnd ? bytes.readUInt32BE(at) : bytes.readUInt32LE(at)) + b) >>> 0;
    b = (b + (bigEnd ? bytes.readUInt32BE(at + 4) : bytes.readUInt32LE(at + 4)) + a) >>> 0;
  }
  return [a, b];
}
