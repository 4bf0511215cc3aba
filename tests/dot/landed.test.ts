import { beforeAll, describe, expect, test } from 'vitest';
import type { Dot } from '../../src/dot/dot.js';
import type { Job } from '../../src/job/job.js';
import { planOf, type Plan } from '../../src/plan.js';
import { sampleJob } from '../samples.js';
import { clearances, marginByBvh, SINGLE } from './oracles.js';

describe('glue as it landed', () => {
  let job: Job;
  let planned: Plan;
  beforeAll(() => {
    job = sampleJob('mere-prone');
    planned = planOf(job);
  });
  const withGlue = (glued: Job['dots']['glued'], more: Partial<Job['dots']> = {}): Job => ({
    ...job,
    dots: { ...job.dots, ...more, glued },
  });
  const dotsOf = (plan: Plan, joint: string) => plan.glue.dots.filter((dot) => dot.joint === joint);
  const asPlanned = (joint: string) => dotsOf(planned, joint).map(({ x, z, diameter }) => ({ x, z, diameter }));

  // Distances by three-mesh-bvh.
  test('every dot has the margin that is told, planned or landed', () => {
    const plan = planOf(withGlue([{ joint: 'JR2', dots: asPlanned('JR2'), smears: [] }]));
    const margins = marginByBvh(plan, plan.glue.dots);
    for (const { id, margin, diameter } of plan.glue.dots) {
      expect(margins.get(id)! - margin, id).toBeGreaterThanOrEqual(-SINGLE);
      // Proved as a polygon of 16 sides around it, a tenth of a millimetre thick, and less the chord error.
      const less = (diameter / 2) * (1 / Math.cos(Math.PI / 16) - 1) + plan.board.mesh.chordError;
      expect(margins.get(id)! - margin, id).toBeLessThan(less + 0.1);
    }
  });

  test('where every dot landed as planned, nothing changes', () => {
    const plan = planOf(withGlue([{ joint: 'JR2', dots: asPlanned('JR2'), smears: [] }]));
    expect(plan.chambers).toEqual(planned.chambers);
    expect(dotsOf(plan, 'JR2').every(({ glued }) => glued)).toBe(true);
  });

  test('one dot that landed elsewhere changes only the chambers it is near to; all others keep number and shape', () => {
    const dots = asPlanned('JR2');
    const moved = dots.map((dot, i) => (i === 3 ? { ...dot, x: dot.x + 60 } : dot));
    const plan = planOf(withGlue([{ joint: 'JR2', dots: moved, smears: [] }]));
    const places = (each: Plan) =>
      new Map(
        each.layup.rows.flatMap((row) =>
          each.chambers.filter((c) => c.row === row.id).map((c) => [c.id, JSON.stringify(c)] as const),
        ),
      );
    const before = places(planned);
    const changed = [...places(plan)].filter(([id, shape]) => before.get(id) !== shape).map(([id]) => id);
    const from = dots[3]!.x;
    expect(changed.length).toBeGreaterThan(0);
    for (const id of changed) {
      const s = plan.chambers.find((chamber) => chamber.id === id)!.profile.map(([each]) => each);
      expect(Math.min(...s), id).toBeLessThan(from + 60 + 30);
      expect(Math.max(...s), id).toBeGreaterThan(from - 30);
      expect(id).toMatch(/^R[12]-/);
    }
  });

  test('a smear is kept off with the same clearance', async () => {
    const { s, z } = { s: 2000, z: 60 };
    const smear = { from: { x: s, z }, to: { x: s + 40, z: z + 30 }, width: 10 };
    const plan = planOf(withGlue([{ joint: 'JR2', smears: [smear] }]));
    expect(plan.glue.smears).toMatchObject([{ id: 'SR2.1', joint: 'JR2', width: 10 }]);
    expect(dotsOf(plan, 'JR2')).toHaveLength(dotsOf(planned, 'JR2').length);
    const asDot: Dot = {
      ...plan.glue.dots[0]!,
      joint: 'JR2',
      id: 'smear end',
      s,
      z,
      diameter: 10,
      sides: plan.glue.smears[0]!.sides,
    };
    const gaps = await clearances({
      ...plan,
      glue: { ...plan.glue, dots: [asDot, { ...asDot, s: s + 40, z: z + 30 }] },
    });
    expect(gaps.length).toBeGreaterThan(0);
    for (const { gap, chamber } of gaps) expect(gap, chamber).toBeGreaterThanOrEqual(job.dots.clearance - SINGLE);
  });

  test('a dot may be swallowed whole where the job allows it, and the plan says so', () => {
    const plan = planOf(
      withGlue([{ joint: 'JR2', dots: [{ x: 2100, diameter: 12 }], smears: [] }], {
        may: ['trim', 'split', 'swallow'],
      }),
    );
    const ways = dotsOf(plan, 'JR2')[0]!.sides.map(({ way }) => way);
    expect(ways).toContain('swallowed');
    expect(plan.notes).toContainEqual(expect.objectContaining({ kind: 'glue', where: 'DR2.1', why: 'swallowed' }));
  });

  test('a joint that is not there, a dot off its face and one too near to the surface are said with their places', () => {
    const plan = planOf(
      withGlue([
        { joint: 'JR7', dots: [], smears: [] },
        {
          joint: 'JR2',
          dots: [
            { x: 2000, height: { z: 900 }, diameter: 12 },
            { x: 2000, height: { z: 12 }, diameter: 12 },
          ],
          smears: [],
        },
      ]),
    );
    const said = plan.notes.filter(({ kind }) => kind === 'glue');
    expect(said).toContainEqual(expect.objectContaining({ where: 'JR7', why: 'no-joint', by: ['JL2', 'JR2'] }));
    expect(said).toContainEqual(expect.objectContaining({ where: 'DR2.1', why: 'off-face', at: 2000 }));
    expect(said).toContainEqual(expect.objectContaining({ where: 'DR2.2', why: 'margin', needs: job.dots.margin }));
  });
});

describe('what chambers may suffer', () => {
  const job = sampleJob('mere-prone');
  const lost = (plan: Plan) => plan.glue.losses.reduce((sum, { before, after }) => sum + before - after, 0);
  const planWith = (may: Job['dots']['may']) => planOf({ ...job, dots: { ...job.dots, may } });

  test('the more is allowed, the less is lost; shifting rows or swallowing loses nothing here', () => {
    const usual = lost(planWith(['trim', 'split']));
    expect(usual).toBeGreaterThan(0);
    expect(lost(planWith(['trim', 'split', 'swallow']))).toBe(0);
    expect(lost(planWith(['trim', 'split', 'stagger']))).toBeLessThan(usual);
    expect(lost(planWith(['trim']))).toBeGreaterThan(usual);
  });

  test('where nothing is allowed the plan says which gaps are too wide', () => {
    const plan = planWith([]);
    expect(lost(plan)).toBe(0);
    const said = plan.notes.filter(({ kind, why }) => kind === 'glue' && why === 'gap');
    expect(said.length).toBeGreaterThan(0);
    for (const { has, needs } of said) expect(has).toBeGreaterThan(needs!);
  });
});
