import { layupOf } from '../../src/layup/layupOf.js';
import { expect, test } from 'vitest';
import { gluing } from '../../src/dot/gluing.js';
import { planOf } from '../../src/plan.js';
import { sampleJob } from '../samples.js';

test('margins known from a plan before hold in the plane of their joint only, whatever other joint has that name now', () => {
  const job = sampleJob('mere-prone');
  const plan = planOf(job);
  const { board, trees, layup } = plan;
  // Dots at the same s and z, as if a joint of that name had lain 3 mm further out and left them 0.9 mm more.
  const elsewhere = {
    chambers: plan.chambers,
    layup: { joints: layup.joints.map((joint) => ({ ...joint, at: joint.at + 3 })) },
    glue: { ...plan.glue, dots: plan.glue.dots.map((dot) => ({ ...dot, margin: dot.margin + 0.9 })) },
  };
  const { glue } = gluing(board, layupOf(job.glueUp, board.length), trees, job, elsewhere);
  expect(glue.dots).toEqual(plan.glue.dots);
});
