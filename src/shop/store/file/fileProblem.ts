import words from '../../../../templates/tracker.json' with { type: 'json' };
import { problemAt, type Problem, type ProblemKind } from '../problem.js';
import { Damaged } from './rowsOf.js';

type FileTrouble = Exclude<ProblemKind, 'away' | 'not-let-in' | 'elsewhere'>;

/** A problem of this kind, about this file; `detail` is what the system said. */
export function problem(kind: FileTrouble, where: string, detail?: string): Problem {
  return problemAt(kind, words.file[kind], where, detail);
}

/** SQLite's primary result codes (sqlite.org/rescode.html) and what each means to a builder. */
const KIND_OF_CODE: ReadonlyMap<number, FileTrouble> = new Map([
  [3, 'read-only'], //   SQLITE_PERM
  [5, 'busy'], //        SQLITE_BUSY
  [6, 'busy'], //        SQLITE_LOCKED
  [8, 'read-only'], //   SQLITE_READONLY
  [10, 'unreadable'], // SQLITE_IOERR
  [11, 'damaged'], //    SQLITE_CORRUPT
  [13, 'full'], //       SQLITE_FULL
  [14, 'unreadable'], // SQLITE_CANTOPEN
  [15, 'busy'], //       SQLITE_PROTOCOL
  [26, 'damaged'], //    SQLITE_NOTADB
]);

/** SQLITE_IOERR_SHORT_READ: the file ends before it should, so it was cut short. */
const SHORT_READ = 522;

/** The system's own refusals (errno(3)), where a file is not even opened. */
const KIND_OF_SYSTEM: ReadonlyMap<string, FileTrouble> = new Map([
  ['EACCES', 'read-only'],
  ['EPERM', 'read-only'],
  ['EROFS', 'read-only'],
  ['ENOSPC', 'full'],
  ['EDQUOT', 'full'],
  ['EBUSY', 'busy'],
  ['EIO', 'unreadable'],
  ['EISDIR', 'unreadable'],
]);

/** SQLITE_ERROR: here only ever that our tables are not there, because another file stands in the place of ours. */
export function isOutOfPlace(error: unknown): boolean {
  return (error as { rawCode?: unknown }).rawCode === 1;
}

/** The problem behind an error of SQLite. Any other error is ours and is thrown on. */
export function problemOf(error: unknown, where: string): Problem {
  if (error instanceof Damaged) return problem('damaged', where, error.message);
  const { rawCode, message } = error as { rawCode?: unknown; message?: unknown };
  // The lowest eight bits of an extended code are its primary code (sqlite.org/rescode.html, section 2).
  const kind =
    rawCode === SHORT_READ ? 'damaged' : typeof rawCode === 'number' ? KIND_OF_CODE.get(rawCode & 0xff) : undefined;
  if (kind) return problem(kind, where, String(message));
  const { code } = error as NodeJS.ErrnoException;
  const system = typeof code === 'string' ? KIND_OF_SYSTEM.get(code) : undefined;
  if (system) return problem(system, where, String(message));
  // Where the file cannot be opened at all, the library gives no code, only SQLite's number in the text.
  if (typeof message === 'string' && message.startsWith('ConnectionFailed'))
    return problem('unreadable', where, message);
  throw error;
}
