/** Where a command reads and writes for people. */
export interface Io {
  readonly out: (line: string) => void;
  readonly err: (line: string) => void;
  /** Whether a person watches: progress is shown to people only. */
  readonly isTerminal: boolean;
  /** Settles when the builder stops a command that goes on; asked only by those, since it takes Ctrl+C over. */
  readonly stopped: () => Promise<void>;
  /** What the builder answers to a question, a line; nothing once there are no more answers, or at Ctrl+C. */
  readonly ask: (question: string) => Promise<string | undefined>;
}

/**
 * What a command ends with: well; something a builder must act on; not understood or not possible. The help says it in
 * words.
 */
export const WELL = 0;
export const TO_ACT_ON = 1;
export const REFUSED = 2;

/** One command of the program. How it is called is in `usage.ts`. */
export interface Command {
  readonly run: (args: readonly string[], io: Io) => Promise<number>;
}
