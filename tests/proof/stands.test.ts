import { expect, test } from 'vitest';
import { planOf } from '../../src/plan.js';
import { proofOf } from '../../src/proof/proof.js';
import { SAMPLES, sampleJob } from '../samples.js';

// The proof shares no code with the planner: what it refuses of a plan was made wrong, or the proof is.
test.each(SAMPLES)('the plan of %s stands in the proof of all its rules, walls and all else', (name) => {
  const plan = planOf(sampleJob(name));
  expect(plan.chambers.length).toBeGreaterThan(20);
  expect(proofOf(plan)).toEqual({ thin: [], faults: [] });
});
