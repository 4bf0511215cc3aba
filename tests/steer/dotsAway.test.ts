import { describe, expect, test } from 'vitest';
import { planOf, type Plan } from '../../src/plan.js';
import { dotsAway } from '../../src/steer/dotsAway.js';
import { sampleJob } from '../samples.js';

const finished = ({ weights }: Plan) => weights.stages.find(({ stage }) => stage === 'finished')!.weight;

describe('what routing dots away would save', () => {
  const plan = planOf(sampleJob('tarn-rescue'));
  const { job } = plan;
  const swallowing = { ...job, dots: { ...job.dots, may: [...job.dots.may, 'swallow' as const] } };

  test('is what a plan that swallows them has less, made afresh', () => {
    const away = dotsAway(plan)!;
    const other = planOf(swallowing);
    expect(away.blocks).toBe(plan.blocks.length - other.blocks.length);
    expect(away.blocks).toBeGreaterThan(10);
    expect(away.weight).toBeCloseTo(finished(plan) - finished(other), 9);
    expect(Math.abs(away.softer)).toBeLessThan(0.05);
  });

  test('is not told where the job allows it, nor where there are no dots', () => {
    expect(dotsAway(planOf(swallowing))).toBeUndefined();
    expect(dotsAway({ ...plan, glue: { ...plan.glue, dots: [] } })).toBeUndefined();
  });
});
