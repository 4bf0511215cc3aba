import { describe, expect, test } from 'vitest';
import { MATERIALS } from '../../src/job/materials.js';
import type { TargetSpec } from '../../src/job/spec/finish.js';
import { planOf } from '../../src/plan.js';
import { parseLength } from '../../src/length/length.js';
import { printExactly } from '../../src/length/exactly.js';
import { NEAR, steer, WALLS } from '../../src/steer/steer.js';
import { inches, pounds, tarn } from '../weigh/tarn.js';

const job = tarn();
const plan = planOf(job);
const foam = (name: string) => MATERIALS.find((each) => each.name === name)!;
const bounds = {
  deckSkin: [inches(3 / 8), inches(11 / 16)],
  bottomSkin: [inches(5 / 16), inches(5 / 8)],
  railWall: [inches(5 / 8), inches(1.25)],
  web: [inches(7 / 8), inches(1.5)],
} satisfies Partial<TargetSpec>;

describe('a weight that can be met', () => {
  const steps: [number, number][] = [];
  const found = steer(plan, job, { weight: pounds(37.5), ...bounds }, (done, of) => steps.push([done, of]));

  test('is met, and a plan of the job that was found weighs just that', () => {
    expect(found.met).toBe(true);
    expect(found.hinders).toEqual([]);
    const again = planOf(found.job);
    const finished = again.weights.stages.at(-1)!.weight;
    expect(Math.abs(finished - pounds(37.5))).toBeLessThanOrEqual(NEAR.weight);
    expect(finished).toBeCloseTo(found.reached, 9);
  });

  test('weighs the same when it is planned from the values as they are told', () => {
    const told = (mm: number) => parseLength(printExactly(mm, 'in'), 'in');
    const walls = WALLS.map((wall) => {
      const read = told(found.job.chambers[wall]);
      return [wall, read.ok ? read.value : NaN] as const;
    });
    const again = planOf({ ...found.job, chambers: { ...found.job.chambers, ...Object.fromEntries(walls) } });
    expect(again.weights.stages.at(-1)!.weight).toBeCloseTo(found.reached, 9);
    expect(again.chambers.length).toBe(planOf(found.job).chambers.length);
  });

  test('keeps every wall within its bounds, and all walls by the same share', () => {
    for (const wall of ['deckSkin', 'bottomSkin', 'railWall', 'web'] as const) {
      const [least, most] = bounds[wall];
      // On a tenth of a millimetre, so that what is told is what was planned.
      expect(Math.abs(found.job.chambers[wall] - least - found.share * (most - least))).toBeLessThanOrEqual(
        0.05 + 1e-9,
      );
      expect(found.job.chambers[wall]).toBeGreaterThanOrEqual(least);
      expect(found.job.chambers[wall]).toBeLessThanOrEqual(most);
    }
    expect(found.share).toBeGreaterThan(0);
    expect(found.share).toBeLessThan(1);
  });

  test('has no thicker walls to offer: everything thicker on its curve is heavier', () => {
    for (const { share, weight } of found.curve)
      if (share > found.share + 1e-9) expect(weight).toBeGreaterThan(found.reached);
  });

  test('shows the trade-off from thin to thick walls', () => {
    expect(found.curve.length).toBeGreaterThanOrEqual(5);
    expect(found.curve[0]!.share).toBe(0);
    expect(found.curve.at(-1)!.share).toBe(1);
    expect(found.curve[0]!.thinnest!).toBeLessThan(found.curve.at(-1)!.thinnest!);
    expect(found.curve[0]!.weight).toBeLessThan(found.curve.at(-1)!.weight);
  });

  test('says how far it is, up to the end', () => {
    expect(steps.length).toBeGreaterThanOrEqual(5);
    expect(steps.at(-1)![0]).toBe(steps.at(-1)![1]);
    for (let i = 1; i < steps.length; i++) expect(steps[i]![0]).toBeGreaterThanOrEqual(steps[i - 1]![0]);
  });
});

test('lighter cloth and lighter blocks are taken where that keeps the walls thicker', () => {
  const fixed = steer(plan, job, { weight: pounds(37.2), ...bounds });
  const free = steer(plan, job, {
    weight: pounds(37.2),
    ...bounds,
    fills: [foam('eps-19'), foam('eps-12')],
    cloths: [job.glass.deck[0]!, 0.75 * job.glass.deck[0]!],
  });
  expect(free.met).toBe(true);
  expect(free.share).toBeGreaterThan(fixed.share);
  expect(free.job.glass!.deck[0]).toBeCloseTo(0.75 * job.glass.deck[0]!, 6);
});

test('a weight out of reach is missed by as little as can be, and what stands in the way is named', () => {
  const found = steer(plan, job, {
    weight: pounds(25),
    deckSkin: bounds.deckSkin,
    fills: [foam('eps-12'), foam('eps-15')],
  });
  expect(found.met).toBe(false);
  expect(found.share).toBe(0);
  expect(found.reached).toBe(Math.min(...found.curve.map(({ weight }) => weight)));
  expect(found.hinders).toEqual([
    { lever: 'deckSkin', at: 'least' },
    { lever: 'bottomSkin', at: 'fixed' },
    { lever: 'railWall', at: 'fixed' },
    { lever: 'web', at: 'fixed' },
    { lever: 'fill', at: 'least' },
    { lever: 'cloth', at: 'fixed' },
  ]);
});

test('a balance point is steered to as well', () => {
  const ends = steer(plan, job, { balance: 0, ...bounds }).curve.map(({ balance }) => balance);
  const asked = (Math.min(...ends) + Math.max(...ends)) / 2;
  const found = steer(plan, job, { balance: asked, ...bounds });
  expect(found.aim).toBe('balance');
  expect(found.met).toBe(true);
  expect(Math.abs(planOf(found.job).weights.stages.at(-1)!.balance.x - asked)).toBeLessThanOrEqual(NEAR.balance);
});

describe('a board that was measured after shaping', () => {
  const { thickness } = plan.board.surface;
  const measured = {
    ...job,
    shaped: [0.3, 0.55].map((share) => {
      const x = share * plan.board.length;
      return { kind: 'thickness', x, y: 0, value: thickness(x) - 1.5, off: 'deck' } as const;
    }),
  };

  test('weighs with what was found just what was told', () => {
    const found = steer(planOf(measured), measured, { weight: pounds(37.5), ...bounds });
    expect(planOf(found.job).weights.stages.at(-1)!.weight).toBeCloseTo(found.reached, 9);
  });
});
