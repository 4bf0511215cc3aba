import type { Writable } from 'node:stream';

/** Where a command reads and writes for people. */
export interface Io {
  readonly out: (line: string) => void;
  readonly err: (line: string) => void;
  /** Standard output itself, for results that are data. */
  readonly stdout: Writable;
  /** Whether a person watches: progress is shown to people only. */
  readonly isTerminal: boolean;
  /** Settles when the builder stops a command that goes on; asked only by those, since it takes Ctrl+C over. */
  readonly stopped: () => Promise<void>;
}

/** What a command ends with: well; an answer a builder must act on; not understood or not possible. */
export const WELL = 0;
export const UNSOUND = 1;
export const REFUSED = 2;

/** One command of the program. */
export interface Command {
  /** How it is called and what it does, for the help. */
  readonly usage: string;
  readonly run: (args: readonly string[], io: Io) => Promise<number>;
}
