import { readFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import words from '../../templates/command.json' with { type: 'json' };
import { diskFinding } from '../disk/diskFinding.js';
import { writeNew } from '../disk/replace.js';
import { understood } from '../typed/args.js';
import { WELL, type Command } from './io.js';
import { refuse } from './refuse.js';

const STARTER = fileURLToPath(new URL('../../../templates/starter.yaml', import.meta.url));

export const newCommand: Command = {
  async run(args, io) {
    const asked = understood(args, {}, 1);
    if ('remedy' in asked) return refuse(io, asked, 'new');
    const file = asked.operands[0]!;
    const { there, remedy } = words.new;
    try {
      if (!(await writeNew(file, await readFile(STARTER, 'utf8'))))
        return refuse(io, { where: file, what: there, remedy });
    } catch (error) {
      return refuse(io, { ...diskFinding(file, error), remedy });
    }
    io.out(`${file} is begun. Change it, then: chamberwright plan ${file}`);
    return WELL;
  },
};
