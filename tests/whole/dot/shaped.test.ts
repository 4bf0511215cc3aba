import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { ShapedSpec } from '../../../src/job/spec/shaped.js';
import { planOf, type Plan } from '../../../src/plan.js';
import { proofOf } from '../../../src/proof/proof.js';
import { verdictOf } from '../../../src/verdict/verdict.js';
import { sayFinding } from '../../../src/finding/say.js';
import { sampleJob, SAMPLES } from '../../samples.js';
import { clearances, SINGLE } from '../../dot/oracles.js';
import { evenly } from '../../evenly.js';

const SEED = 20261126;
const READINGS = 4;

const wheres = (plan: Plan) => plan.glue.dots.map(({ id, joint, s, z, diameter }) => ({ id, joint, s, z, diameter }));

describe.each(SAMPLES)('on the sample %s', (name) => {
  const job = sampleJob(name);
  const drawn = planOf(job);
  const { length } = drawn.board;

  /** What a caliper may find: a little more or less than was drawn, here and there. */
  const readings = fc
    .array(
      fc.record({
        share: evenly(0.1, 0.9),
        off: evenly(-3, 3),
        kind: fc.constantFrom('thickness', 'width'),
        side: fc.constantFrom('deck', 'bottom', 'both'),
      }),
      { minLength: 1, maxLength: 4 },
    )
    .map((each) =>
      each.map(({ share, off, kind, side }): ShapedSpec => {
        const x = share * length;
        const [left, right] = drawn.board.surface.outlines;
        return kind === 'width'
          ? { kind, x, value: left.outer(x) + right.outer(x) + off }
          : { kind: 'thickness', x, y: 0, value: drawn.board.surface.thickness(x) + off, off: side };
      }),
    );

  test(`whatever is measured after shaping (seed ${SEED}), every dot stays where the blank was glued, and chambers keep off it`, async () => {
    let moved = 0;
    await fc.assert(
      fc.asyncProperty(readings, async (shaped) => {
        const plan = planOf({ ...job, shaped });
        expect(wheres(plan)).toEqual(wheres(drawn));
        moved += plan.board.volume === drawn.board.volume ? 0 : 1;
        for (const { dot, chamber, gap } of await clearances(plan))
          expect(gap, `${dot} to ${chamber}`).toBeGreaterThanOrEqual(job.dots.clearance - SINGLE);
      }),
      { seed: SEED, numRuns: READINGS },
    );
    expect(moved).toBeGreaterThan(0);
  });
});

describe('a blank that is glued up already', () => {
  const job = sampleJob('tarn-rescue');
  const drawn = planOf(job);
  const dot = drawn.glue.dots.find(({ x }) => x > 400)!;
  /** So much was taken off the whole deck beside that dot that its margin is gone. */
  const thinned = (by: number): ShapedSpec[] => {
    const { thickness } = drawn.board.surface;
    return [-200, 0, 200].map((more) => {
      const x = dot.x + more;
      return { kind: 'thickness', x, y: 0, value: thickness(x) - by, off: 'deck' };
    });
  };

  test('two readings of a sixteenth of an inch move no dot', () => {
    const readings = [48, 64].map((inches): ShapedSpec => {
      const x = 25.4 * inches;
      return { kind: 'thickness', x, y: 0, value: drawn.board.surface.thickness(x) + 25.4 / 16, off: 'both' };
    });
    expect(wheres(planOf({ ...job, shaped: readings }))).toEqual(wheres(drawn));
  });

  test('a dot that shaping has brought too near to the surface is told with its place and stops the papers', () => {
    const plan = planOf({ ...job, shaped: thinned(2 * (dot.margin - job.dots.margin) + 12) });
    expect(wheres(plan)).toEqual(wheres(drawn));
    const told = plan.notes.filter(({ kind, why }) => kind === 'glue' && (why === 'margin' || why === 'off-face'));
    expect(told.map(({ where }) => where)).toContain(dot.id);
    for (const { where, has } of told) expect(plan.glue.dots.find(({ id }) => id === where)!.margin, where).toBe(has);
    expect(verdictOf(plan, proofOf(plan)).refusals.map(sayFinding).join('\n')).toContain(dot.id);
    expect(verdictOf(drawn, proofOf(drawn)).refusals).toEqual([]);
  });

  test('rows stay shifted as they were when it was glued up', () => {
    const may = { ...job, dots: { ...job.dots, may: ['trim', 'split', 'stagger'] as const } };
    const before = planOf(may);
    const plan = planOf({ ...may, shaped: thinned(4) });
    expect(plan.layup.rows.map(({ parity }) => parity)).toEqual(before.layup.rows.map(({ parity }) => parity));
    expect(wheres(plan)).toEqual(wheres(before));
  });

  test('other walls tried on it go around the same dots', () => {
    const plan = planOf({ ...job, shaped: thinned(2) });
    const thicker = { ...plan.job, chambers: { ...job.chambers, railWall: job.chambers.railWall + 4 } };
    const over = planOf(thicker, plan);
    expect(over.chambers).toEqual(planOf(thicker).chambers);
    expect(wheres(over)).toEqual(wheres(planOf({ ...thicker, shaped: [] })));
  });

  test('a dot of which no height was written stays in the middle of the face as drawn', () => {
    const joint = dot.joint;
    const glued = [{ joint, dots: [{ x: dot.x, diameter: dot.diameter }], smears: [] }];
    const as = { ...job, dots: { ...job.dots, glued } };
    const at = (plan: Plan) => plan.glue.dots.filter((each) => each.joint === joint).map(({ s, z }) => ({ s, z }));
    expect(at(planOf({ ...as, shaped: thinned(2) }))).toEqual(at(planOf(as)));
  });
});
