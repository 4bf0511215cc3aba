import { describe, expect, test } from 'vitest';
import { planOf } from '../../src/plan.js';
import { solidAcross } from '../../src/view/solidAcross.js';
import { sampleJob } from '../samples.js';

// Counted from the published profiles alone; faces of the samples are parallel to the centreline, so that s is x.
describe('how many rows are solid beside a dot', () => {
  test.each(['tarn-rescue', 'mere-prone', 'fell-short'] as const)(
    '%s: never all, nor more than the share that is asked',
    (name) => {
      const plan = planOf(sampleJob(name));
      const rows = plan.layup.rows.map(({ id }) =>
        plan.chambers.filter(({ row }) => row === id).map(({ profile }) => profile.map(([s]) => s)),
      );
      const shares = plan.glue.dots.map(({ x }) => {
        const past = rows.filter((row) => Math.min(...row.flat()) < x && x < Math.max(...row.flat()));
        const solid = past.filter((row) => row.every((s) => x <= Math.min(...s) || Math.max(...s) <= x));
        return { x, solid: solid.length, rows: past.length };
      });
      const crossed = shares.filter(({ rows: all }) => all > 0);
      expect(crossed.length).toBeGreaterThan(10);
      for (const { x, solid, rows: all } of crossed) {
        expect(solid / all, `at ${x}`).toBeLessThanOrEqual(plan.job.dots.across);
      }
      const most = solidAcross(plan)!;
      expect(most.solid / most.rows).toBe(Math.max(...crossed.map(({ solid, rows: all }) => solid / all)));
      expect(crossed).toContainEqual(most);
    },
  );
});
