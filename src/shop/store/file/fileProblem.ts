import type { Problem, ProblemKind } from '../problem.js';
import { Damaged } from './rowsOf.js';

type FileTrouble = Exclude<ProblemKind, 'away' | 'not-let-in' | 'elsewhere'>;

const SAID: Readonly<Record<FileTrouble, readonly [what: string, remedy: string]>> = {
  'no-folder': [
    'The folder of the tracker is not there.',
    'Put the job file where it was, or open it from where it is now.',
  ],
  'read-only': [
    'The tracker cannot write here: the folder or the file is read-only.',
    'Copy the job file and everything named like it to a folder you may write to, and open it there.',
  ],
  full: [
    'The disk is full: nothing more can be recorded.',
    'Free some space. What was recorded is safe, and phones keep what they could not send and send it later.',
  ],
  busy: [
    'Another program holds the tracker file.',
    'Wait a moment and try again. If it lasts, close the other program (a backup, a file viewer, a second tracker).',
  ],
  damaged: [
    'The tracker file is damaged.',
    'Stop the tracker and start it again: it puts the damaged file aside and saves what can be read from it.',
  ],
  newer: [
    'The tracker file was written by a newer chamberwright.',
    'Use that newer one. This one leaves the file as it is.',
  ],
  foreign: [
    'The file with the name of the tracker is some other database.',
    'Move it elsewhere or rename it. It was left as it is.',
  ],
  moved: [
    'The tracker file was moved, renamed, replaced or deleted while the tracker was running.',
    'Put the file back, or stop the tracker and start it again: what was recorded is then taken over from the rescued file. ' +
      'Nothing more is recorded until then; phones keep what they could not send.',
  ],
  orphan: [
    'The tracker file is gone, and what was written to it last still lies beside its place.',
    'Put the file back beside it and start again: the two belong together. If the file is lost for good, move these away to begin anew.',
  ],
  unreadable: ['The tracker file could not be read or written.', 'Check the disk and the cable, then try again.'],
};

/** A problem of this kind, about this file; `detail` is what the system said. */
export function problem(kind: FileTrouble, where: string, detail?: string): Problem {
  const [what, remedy] = SAID[kind];
  return { kind, what: detail === undefined ? what : `${what} (${detail})`, where, remedy };
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
