import { expect, test } from 'vitest';
import { planOf } from '../../src/plan.js';
import { sampleJob } from '../samples.js';

test('margins known from a plan before hold in the plane of their joint only, whatever other joint has that name now', () => {
  const job = sampleJob('mere-prone');
  const plan = planOf(job);
  // Dots at the same s and z, as if a joint of that name had lain 3 mm further out and left them 0.9 mm more.
  const elsewhere = {
    ...plan,
    layup: { ...plan.layup, joints: plan.layup.joints.map((joint) => ({ ...joint, at: joint.at + 3 })) },
    glue: { ...plan.glue, dots: plan.glue.dots.map((dot) => ({ ...dot, margin: dot.margin + 0.9 })) },
  };
  expect(planOf(job, elsewhere).glue.dots).toEqual(plan.glue.dots);
});
