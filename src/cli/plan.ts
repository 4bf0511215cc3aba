import { planOf } from '../plan.js';
import { proofOf } from '../proof/proof.js';
import { publishedOf, resultText } from '../view/result.js';
import { isWell, sayVerdict, verdictOf } from '../verdict/verdict.js';
import { understood } from '../typed/args.js';
import { REFUSED, TO_ACT_ON, WELL, type Command } from './io.js';
import { jobFrom } from './jobFile.js';
import { reportOf } from './report.js';
import { refuse } from './refuse.js';

export const planCommand: Command = {
  async run(args, io) {
    const asked = understood(args, { json: { type: 'boolean' } }, 1);
    if ('remedy' in asked) return refuse(io, asked, 'plan');
    const read = jobFrom(asked.operands[0]!, io);
    if (!read) return REFUSED;
    const plan = planOf(read.job);
    const verdict = verdictOf(plan, proofOf(plan));
    // Whether it stands, and what hardly can be, comes first: a builder is to see it before any figure.
    const report = () => [...sayVerdict(verdict, plan), '', ...reportOf(plan)].join('\n');
    io.out(asked.values.json ? resultText(publishedOf(plan, verdict)) : report());
    return isWell(verdict) ? WELL : TO_ACT_ON;
  },
};
