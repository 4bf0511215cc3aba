import { describe, expect, test } from 'vitest';
import type { Job } from '../../src/job/job.js';
import { planOf, type Plan } from '../../src/plan.js';
import { sampleJob } from '../samples.js';

const job = sampleJob('mere-prone');
const planWith = (dots: Partial<Job['dots']>) => planOf({ ...job, dots: { ...job.dots, ...dots } });
const joints = (plan: Plan) => plan.layup.joints.filter(({ kind }) => kind === 'dotted').map(({ id }) => id);
const dotsOn = (plan: Plan, joint: string) => plan.glue.dots.filter((dot) => dot.joint === joint);
const said = (plan: Plan, joint: string, why: string) =>
  plan.notes.filter((note) => note.kind === 'glue' && note.where === joint && note.why === why);
const rounded = (all: readonly (readonly (number | undefined)[])[]) =>
  all.map((each) => each.map((mm) => mm!.toFixed(4)));

describe('the dots of a joint', () => {
  // Worked out again from the dots of the finished plan.
  test.each([
    ['nothing may give way', { may: [] }],
    ['they are asked for closer than they are broad', { spacing: 10 }],
  ] as const)('are told wherever two lie further apart than asked, and nowhere else: %s', (_, dots) => {
    const plan = planWith(dots);
    let wide = 0;
    for (const joint of joints(plan)) {
      const s = dotsOn(plan, joint).map((dot) => dot.s);
      expect(s).toEqual([...s].sort((a, b) => a - b));
      const gaps = s
        .slice(1)
        .map((each, i) => [each, s[i]!] as const)
        .filter(([b, a]) => b - a > plan.job.dots.spacing + 1e-6);
      wide += gaps.length;
      expect(rounded(said(plan, joint, 'gap').map(({ at, has, needs }) => [at, has, needs]))).toEqual(
        rounded(gaps.map(([b, a]) => [(a + b) / 2, b - a, plan.job.dots.spacing])),
      );
    }
    expect(wide).toBeGreaterThan(0);
  });

  test('are told where the nearest to an end is further from it than asked, at both ends, with how far', () => {
    const [near, far] = [planWith({ nearEnd: 1 }), planWith({ nearEnd: 5000 })];
    for (const joint of joints(near)) {
      expect(said(far, joint, 'near-end')).toEqual([]);
      const s = dotsOn(near, joint).map((dot) => dot.s);
      for (const { at, has, needs } of said(near, joint, 'near-end')) {
        expect(needs).toBe(1);
        const end = at! < s[0]! ? s[0]! : s[s.length - 1]!;
        expect(Math.abs(end - at!)).toBeCloseTo(has!, 6);
        expect(has).toBeGreaterThan(1);
      }
    }
    // A solid nose and tail leave room for a dot at each end of some joint only.
    const told = joints(planWith({ nearEnd: 1, may: [] })).flatMap((joint) => said(near, joint, 'near-end'));
    expect(told.length).toBeLessThanOrEqual(2 * joints(near).length);
  });

  test('are none where a joint is nowhere as high as a dot with its margins, and that is told with what it would need', () => {
    const plan = planWith({ margin: 200 });
    expect(plan.glue.dots).toEqual([]);
    for (const joint of joints(plan))
      expect(said(plan, joint, 'no-room')).toEqual([
        { kind: 'glue', where: joint, why: 'no-room', by: [], needs: job.dots.diameter + 400 },
      ]);
  });

  test('lie no nearer to each other than they are broad with their clearance, however close they are asked for', () => {
    const plan = planWith({ spacing: 5 });
    for (const joint of joints(plan)) {
      const s = dotsOn(plan, joint).map((dot) => dot.s);
      for (let i = 1; i < s.length; i++)
        expect(s[i]! - s[i - 1]!).toBeGreaterThanOrEqual(job.dots.diameter + job.dots.clearance - 1e-6);
    }
  });

  test('are counted from the nose, and are as broad as asked', () => {
    const plan = planWith({});
    for (const joint of joints(plan))
      dotsOn(plan, joint).forEach(({ id, diameter, glued }, i) => {
        expect([id, diameter, glued]).toEqual([`${joint.replace('J', 'D')}.${i + 1}`, job.dots.diameter, false]);
      });
  });
});
