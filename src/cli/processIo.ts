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
  };
}
