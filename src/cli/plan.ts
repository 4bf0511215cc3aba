import { planOf } from '../plan.js';
import { resultOf } from '../result.js';
import { understood } from '../typed/args.js';
import { REFUSED, WELL, type Command } from './io.js';
import { jobFrom } from './jobFile.js';
import { reportOf } from './report.js';
import { USAGE } from './usage.js';

export const planCommand: Command = {
  async run(args, io) {
    const asked = understood(args, { json: { type: 'boolean' } }, 1);
    if ('why' in asked) {
      io.err(`${asked.why}\n\n  chamberwright ${USAGE.plan}`);
      return REFUSED;
    }
    const read = jobFrom(asked.operands[0]!, io);
    if (!read) return REFUSED;
    const plan = planOf(read.job);
    io.out(asked.values.json ? JSON.stringify(resultOf(plan), null, 1) : reportOf(plan).join('\n'));
    return WELL;
  },
};
