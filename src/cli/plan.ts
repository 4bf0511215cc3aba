import { planOf } from '../plan.js';
import { resultOf } from '../result.js';
import { understood } from './args.js';
import { jobFrom } from './files.js';
import { REFUSED, WELL, type Command } from './io.js';
import { reportOf } from './report.js';

export const planCommand: Command = {
  usage: `plan JOB [--json]
    Plans the chambers and says what comes out: board, rows, every chamber with its thinnest walls, blocks, weights, and
    what was left solid and why. --json prints the same as data, in millimetres and kilograms.`,
  async run(args, io) {
    const asked = understood(args, { json: { type: 'boolean' } }, 1);
    if ('why' in asked) {
      io.err(`${asked.why}\n\n  chamberwright ${planCommand.usage}`);
      return REFUSED;
    }
    const job = await jobFrom(asked.operands[0]!, io);
    if (!job) return REFUSED;
    const plan = planOf(job);
    io.out(asked.values.json ? JSON.stringify(resultOf(plan), null, 1) : reportOf(plan).join('\n'));
    return WELL;
  },
};
