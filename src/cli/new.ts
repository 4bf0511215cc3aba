import { copyFile, constants } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { understood } from './args.js';
import { reason } from './files.js';
import { REFUSED, WELL, type Command } from './io.js';

const STARTER = fileURLToPath(new URL('../../../templates/starter.yaml', import.meta.url));

export const newCommand: Command = {
  usage: `new FILE
    Begins a job file: a small board with every key explained, to be changed into yours.`,
  async run(args, io) {
    const asked = understood(args, {}, 1);
    if ('why' in asked) {
      io.err(`${asked.why}\n\n  chamberwright ${newCommand.usage}`);
      return REFUSED;
    }
    const file = asked.operands[0]!;
    try {
      await copyFile(STARTER, file, constants.COPYFILE_EXCL);
    } catch (error) {
      const there = (error as NodeJS.ErrnoException).code === 'EEXIST';
      io.err(`${file}: ${there ? 'it is there already, and is left as it is' : reason(error)} → choose another name`);
      return REFUSED;
    }
    io.out(`${file} is begun. Change it, then: chamberwright plan ${file}`);
    return WELL;
  },
};
