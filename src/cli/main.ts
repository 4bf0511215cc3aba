#!/usr/bin/env node
import { checkCommand } from './check.js';
import { REFUSED, WELL, type Command, type Io } from './io.js';
import { meshCommand } from './mesh.js';
import { newCommand } from './new.js';
import { openCommand } from './open.js';
import { papersCommand } from './papers.js';
import { planCommand } from './plan.js';
import { steerCommand } from './steer.js';
import { trackCommand } from './track.js';

const COMMANDS: Readonly<Record<string, Command>> = {
  new: newCommand,
  plan: planCommand,
  check: checkCommand,
  papers: papersCommand,
  mesh: meshCommand,
  steer: steerCommand,
  open: openCommand,
  track: trackCommand,
};

const HELP = `chamberwright plans the chambers of a chambered board, proves the walls, and prints everything at full size.

${Object.values(COMMANDS)
  .map(({ usage }) => `  chamberwright ${usage}`)
  .join('\n\n')}

Ends with 0 when all is well, 1 when a wall is too thin, 2 when something was not understood or not possible.`;

async function main([name, ...args]: readonly string[], io: Io): Promise<number> {
  if (name === undefined || name === 'help' || name === '--help' || name === '-h') {
    io.out(HELP);
    return name === undefined ? REFUSED : WELL;
  }
  const command = COMMANDS[name];
  if (!command) {
    io.err(`There is no command ${name}.\n\n${HELP}`);
    return REFUSED;
  }
  if (args[0] === '--help' || args[0] === '-h') {
    io.out(`chamberwright ${command.usage}`);
    return WELL;
  }
  return command.run(args, io);
}

// A reader that has seen enough, like head or less, closes the pipe: that is no error.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code === 'EPIPE') process.exit();
  throw error;
});

process.exitCode = await main(process.argv.slice(2), {
  out: (line) => process.stdout.write(`${line}\n`),
  err: (line) => process.stderr.write(`${line}\n`),
  stdout: process.stdout,
  isTerminal: process.stderr.isTTY === true,
  stopped: () =>
    new Promise((resolve) => {
      process.once('SIGINT', () => resolve());
      process.once('SIGTERM', () => resolve());
    }),
});
