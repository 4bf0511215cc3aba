import { beforeAll, describe, expect, test } from 'vitest';
import { jointFaces } from '../../src/dot/jointFace.js';
import { planOf, type Plan } from '../../src/plan.js';
import { sampleJob, SAMPLES } from '../samples.js';
import { clearances, marginByBvh, SINGLE } from './oracles.js';

describe.each(SAMPLES)('on the sample %s', (name) => {
  let plan: Plan;
  beforeAll(() => {
    plan = planOf(sampleJob(name));
  });

  test('every dot lies inside the finished surface by its margin, and no less than the plan says', () => {
    expect(plan.glue.dots.length).toBeGreaterThan(5);
    const margins = marginByBvh(plan, plan.glue.dots);
    for (const { id, margin } of plan.glue.dots) {
      expect(margins.get(id), id).toBeGreaterThanOrEqual(plan.job.dots.margin - SINGLE);
      expect(margins.get(id), id).toBeGreaterThanOrEqual(margin - SINGLE);
      // The disc is proved as a polygon of 16 sides around it, and thinner by the chord error.
      expect(margins.get(id)! - margin, id).toBeLessThan(0.5);
    }
  });

  test('no chamber comes nearer to a dot than the clearance', async () => {
    const gaps = await clearances(plan);
    expect(gaps.length).toBeGreaterThan(10);
    for (const { dot, chamber, gap } of gaps)
      expect(gap, `${dot} to ${chamber}`).toBeGreaterThanOrEqual(plan.job.dots.clearance - SINGLE);
  });

  test('dots of a joint lie no further apart than asked, or the plan says where', () => {
    for (const { joint } of jointFaces(plan.layup)) {
      const s = plan.glue.dots.filter((dot) => dot.joint === joint.id).map((dot) => dot.s);
      const wide = s.slice(1).filter((each, i) => each - s[i]! > plan.job.dots.spacing + 1e-6);
      const said = plan.notes.filter(({ kind, why, where }) => kind === 'glue' && why === 'gap' && where === joint.id);
      expect(said).toHaveLength(wide.length);
    }
  });

  test('every chamber keeps its walls', () => {
    for (const { id, wall } of plan.chambers)
      for (const patch of ['deck', 'bottom', 'rail'] as const)
        expect(wall[patch], `${id} ${patch}`).toBeGreaterThanOrEqual(plan.asked[patch]);
  });
});
