import { planOf } from '../plan.js';
import { understood } from './args.js';
import { jobFrom } from './files.js';
import { REFUSED, UNSOUND, WELL, type Command } from './io.js';
import { proved, sayThin } from './sound.js';

export const checkCommand: Command = {
  usage: `check JOB
    Proves the walls, nothing else. Ends with 1 when a wall is too thin, naming chamber, wall, place and by how much.`,
  async run(args, io) {
    const asked = understood(args, {}, 1);
    if ('why' in asked) {
      io.err(`${asked.why}\n\n  chamberwright ${checkCommand.usage}`);
      return REFUSED;
    }
    const job = await jobFrom(asked.operands[0]!, io);
    if (!job) return REFUSED;
    const plan = planOf(job);
    const thin = proved(plan);
    for (const wall of thin) io.err(sayThin(wall, job.units));
    if (thin.length > 0) return UNSOUND;
    io.out(`${plan.chambers.length} chambers: every wall is at least what is asked.`);
    return WELL;
  },
};
