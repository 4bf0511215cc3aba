import fc from 'fast-check';
import { expect, test } from 'vitest';
import { readJob } from '../../../src/job/whole/read.js';
import { planOf } from '../../../src/plan.js';
import { jobFiles } from '../../random/jobFile.js';
import { clearances, marginByBvh, SINGLE } from '../../dot/oracles.js';

const SEED = 20260714;
const BOARDS = 12;

// Distances by three-mesh-bvh and manifold-3d.
test(`on random boards no dot is nearer to surface or chamber than asked (seed ${SEED}, ${BOARDS} boards)`, async () => {
  let dots = 0;
  let gaps = 0;
  await fc.assert(
    fc.asyncProperty(
      jobFiles,
      fc.subarray(['trim', 'split', 'stagger'] as const),
      fc.integer({ min: 4, max: 16 }),
      fc.integer({ min: 120, max: 700 }),
      async (file, may, size, spacing) => {
        const written = { ...file, dots: { size, margin: 8, clearance: 5, spacing, may } };
        const { job } = readJob(JSON.stringify(written), 'random', () => undefined);
        if (!job) return;
        const plan = planOf(job);
        dots += plan.glue.dots.length;
        const margins = marginByBvh(plan, plan.glue.dots);
        for (const [id, margin] of margins) expect(margin, id).toBeGreaterThanOrEqual(8 - SINGLE);
        for (const { dot, chamber, gap } of await clearances(plan)) {
          gaps++;
          expect(gap, `${dot} to ${chamber}`).toBeGreaterThanOrEqual(5 - SINGLE);
        }
      },
    ),
    { seed: SEED, numRuns: BOARDS },
  );
  expect(dots).toBeGreaterThan(20);
  expect(gaps).toBeGreaterThan(20);
});
