import words from '../../templates/weights.json' with { type: 'json' };
import { printWeight } from '../length/weight.js';
import type { Plan } from '../plan.js';
import type { Questioned } from '../weigh/weighings.js';
import { say } from '../words/say.js';

/** Each questioned weighing in a sentence: what, against what, what was expected, what to do. */
export function questionedLines({ weights, job }: Pick<Plan, 'weights' | 'job'>): string[] {
  const kg = (weight: number) => printWeight(weight, job.units);
  return weights.questioned.map(({ stage, weight, why, against, expected }: Questioned) =>
    say(words.float[why], {
      stage: words.stage[stage],
      weight: kg(weight),
      before: against ? kg(against.weight) : '',
      beforeStage: against ? words.stage[against.stage] : '',
      low: kg(expected[0]),
      high: kg(expected[1]),
    }),
  );
}
