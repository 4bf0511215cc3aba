import words from '../../templates/weights.json' with { type: 'json' };
import type { Finding } from '../finding/finding.js';
import { printWeight } from '../length/weight.js';
import type { Plan } from '../plan.js';
import type { Questioned } from '../weigh/weighings.js';
import { say } from '../words/say.js';

/** Each questioned weighing: of which stage, against what, what was expected, what to do. */
export function questionedFindings({ weights, job }: Pick<Plan, 'weights' | 'job'>): Finding[] {
  const kg = (weight: number) => printWeight(weight, job.units);
  return weights.questioned.map(({ stage, weight, why, against, expected }: Questioned) => ({
    where: words.stage[stage],
    what: say(words.float[why].what, {
      weight: kg(weight),
      before: against ? kg(against.weight) : '',
      beforeStage: against ? words.stage[against.stage] : '',
      low: kg(expected[0]),
      high: kg(expected[1]),
    }),
    remedy: words.float[why].remedy,
  }));
}
