import { copyFile, constants } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { reason } from '../disk/reason.js';
import { understood } from '../typed/args.js';
import { REFUSED, WELL, type Command } from './io.js';
import { USAGE } from './usage.js';

const STARTER = fileURLToPath(new URL('../../../templates/starter.yaml', import.meta.url));

export const newCommand: Command = {
  async run(args, io) {
    const asked = understood(args, {}, 1);
    if ('why' in asked) {
      io.err(`${asked.why}\n\n  chamberwright ${USAGE.new}`);
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
