import { createInterface, type Interface } from 'node:readline';
import { diskFinding } from '../disk/diskFinding.js';
import { REFUSED, type Io } from './io.js';

/** The terminal, or whatever stands in its place: a pipe that is closed early, a disk that is full. */
export function processIo(): Io {
  let isHeard = true;
  process.stdout.on('error', (error: NodeJS.ErrnoException) => {
    // A reader that has seen enough, like head or less, closes the pipe: that is no error, and what the command ends
    // with stays true.
    if (isHeard && error.code !== 'EPIPE') {
      process.stderr.write(`What is printed cannot be taken: ${diskFinding('', error).what}\n`);
      process.once('exit', () => (process.exitCode = REFUSED));
    }
    isHeard = false;
  });
  // Where nobody takes what is said there is nothing left to say it to.
  process.stderr.on('error', () => undefined);
  return {
    out: (line) => {
      if (isHeard) process.stdout.write(`${line}\n`);
    },
    err: (line) => process.stderr.write(`${line}\n`),
    isTerminal: process.stderr.isTTY === true,
    stopped: () =>
      new Promise((resolve) => {
        process.once('SIGINT', () => resolve());
        process.once('SIGTERM', () => resolve());
      }),
    ask: answers(),
  };
}

/** Lines of the terminal as they are asked for, or of whatever stands in its place. */
function answers(): (question: string) => Promise<string | undefined> {
  let lines: Interface | undefined;
  let typed: AsyncIterator<string> | undefined;
  let isOpen = true;
  return async (question) => {
    if (!lines || !typed) {
      lines = createInterface({ input: process.stdin, ...(process.stdin.isTTY && { output: process.stdout }) });
      // Ctrl+C ends the answers and not the program: what was answered is still to be kept.
      lines.on('SIGINT', () => lines?.close());
      lines.on('close', () => (isOpen = false));
      typed = lines[Symbol.asyncIterator]();
    }
    if (process.stdin.isTTY && isOpen) {
      lines.setPrompt(question);
      lines.prompt();
    } else {
      process.stdout.write(question);
      if (isOpen) lines.resume();
    }
    const { value, done } = await typed.next();
    // A program that has asked all it wants must not wait for more.
    if (isOpen) lines.pause();
    if (!process.stdin.isTTY || done) process.stdout.write('\n');
    return done ? undefined : value;
  };
}
