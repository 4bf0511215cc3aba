import { Clipper, FillRule } from 'clipper2-ts';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Job, KeepOutSpec } from '../../src/job/job.js';
import { readJob } from '../../src/job/read.js';
import { toBoard, toFace } from '../../src/layup/frame.js';
import { planOf, type Plan } from '../../src/plan.js';
import { heightsAt } from '../../src/chamber/heights.js';
import { jobFiles } from '../random/jobFile.js';
import { sampleJob } from '../samples.js';

const SEED = 20260713;
const BOARDS = 25;
/** Clipper counts in whole numbers: thousandths of a millimetre here. */
const SCALE = 1000;
/** What rounding to thousandths may leave of an overlap, mm². */
const NOTHING = 0.05;

type Pair = readonly [number, number];

/** Area of the intersection of two outlines, mm², by clipper2-ts. */
function sharedArea(a: readonly Pair[], b: readonly Pair[]): number {
  const path = (pairs: readonly Pair[]) => [
    pairs.map(([x, y]) => ({ x: Math.round(x * SCALE), y: Math.round(y * SCALE) })),
  ];
  const shared = Clipper.intersect(path(a), path(b), FillRule.NonZero);
  return Math.abs(shared.reduce((sum, each) => sum + Clipper.area(each), 0)) / SCALE ** 2;
}

/** A keep-out's outline as a builder would draw it: a disc inscribed with many sides. */
function drawn(keepOut: KeepOutSpec): readonly Pair[] {
  if (keepOut.kind === 'polygon') return keepOut.points;
  const { x, y } = keepOut;
  if (keepOut.kind === 'disc')
    return Array.from({ length: 180 }, (_, i): Pair => [
      x + keepOut.radius * Math.cos((i * Math.PI) / 90),
      y + keepOut.radius * Math.sin((i * Math.PI) / 90),
    ]);
  const [l, w] = [keepOut.length / 2, keepOut.width / 2];
  return [
    [x - l, y - w],
    [x + l, y - w],
    [x + l, y + w],
    [x - l, y + w],
  ];
}

/** What a chamber covers in plan: a rectangle from end to end and from its face to its depth. */
function inPlan(plan: Plan, row: string, profile: readonly Pair[], depth: readonly [number, number]): Pair[] {
  const { face } = plan.layup.rows.find(({ id }) => id === row)!;
  const s = profile.map(([each]) => each);
  const [from, to] = [Math.min(...s), Math.max(...s)];
  return (
    [
      [from, depth[0]],
      [to, depth[0]],
      [to, depth[1]],
      [from, depth[1]],
    ] as const
  ).map(([at, t]): Pair => {
    const [x, y] = toBoard(face, at, 0, t);
    return [x, y];
  });
}

/**
 * Every chamber against every keep-out: outlines apart, or, where the keep-out has a depth, heights apart over what
 * they share.
 */
function expectClear(plan: Plan): void {
  for (const keepOut of plan.job.keepOuts) {
    const outline = drawn(keepOut);
    for (const { id, row, profile, depth } of plan.chambers) {
      const area = sharedArea(outline, inPlan(plan, row, profile, depth));
      if (area <= NOTHING) continue;
      expect(keepOut.depth, `${id} in ${keepOut.name}`).toBeDefined();
      const { from, deep } = keepOut.depth!;
      const { face } = plan.layup.rows.find((each) => each.id === row)!;
      const z = profile.map(([, each]) => each);
      const s = profile.map(([each]) => each);
      for (const [x, y] of outline) {
        const [at, t] = toFace(face, x, y);
        if (t < depth[0] || t > depth[1] || at < Math.min(...s) || at > Math.max(...s)) continue;
        const heights = heightsAt(plan.board.grid, x, y);
        if (!heights) continue;
        if (from === 'deck')
          expect(Math.max(...z), `${id} under ${keepOut.name}`).toBeLessThanOrEqual(heights.deck - deep + 0.05);
        else expect(Math.min(...z), `${id} over ${keepOut.name}`).toBeGreaterThanOrEqual(heights.bottom + deep - 0.05);
      }
    }
  }
  for (const keepOut of plan.job.jointKeepOuts) {
    for (const { id, row, profile } of plan.chambers) {
      const { face } = plan.layup.rows.find((each) => each.id === row)!;
      if (face.joint !== keepOut.joint) continue;
      const points = keepOut.points.map(([x, z]): Pair => [x / face.along[0], z]);
      expect(sharedArea(points, profile), `${id} in ${keepOut.name}`).toBeLessThanOrEqual(NOTHING);
    }
  }
}

const shape = fc.oneof(
  fc.record({ disc: fc.integer({ min: 10, max: 120 }) }),
  fc.record({
    rectangle: fc.record({ length: fc.integer({ min: 20, max: 400 }), width: fc.integer({ min: 10, max: 80 }) }),
  }),
  fc
    .tuple(fc.integer({ min: 3, max: 7 }), fc.infiniteStream(fc.integer({ min: 10, max: 90 })))
    .map(([corners, radii]) => ({
      polygon: Array.from({ length: corners }, (_, i) => {
        const radius = radii.next().value as number;
        const angle = (2 * Math.PI * i) / corners;
        return [Math.round(radius * Math.cos(angle)), Math.round(radius * Math.sin(angle))];
      }),
    })),
);
const depth = fc.oneof(
  fc.constant({}),
  fc.record({ fromDeck: fc.integer({ min: 5, max: 60 }) }),
  fc.record({ fromBottom: fc.integer({ min: 5, max: 60 }) }),
);

test(`no chamber enters a keep-out, on random boards (seed ${SEED}, ${BOARDS} boards)`, () => {
  let chambers = 0;
  let crossed = 0;
  fc.assert(
    fc.property(
      jobFiles,
      fc.array(
        fc.tuple(fc.double({ min: 0.1, max: 0.9, noNaN: true }), fc.integer({ min: 0, max: 120 }), shape, depth),
        {
          minLength: 1,
          maxLength: 4,
        },
      ),
      (file, keepOuts) => {
        const { length } = (file as { board: { length: number } }).board;
        const written = {
          ...file,
          keepOuts: keepOuts.map(([at, away, size, deep], i) => ({
            name: `region ${i}`,
            at: Math.round(at * length),
            right: away,
            ...size,
            ...deep,
          })),
        };
        const { job } = readJob(JSON.stringify(written), 'random', () => undefined);
        if (!job) return;
        const plan = planOf(job);
        chambers += plan.chambers.length;
        crossed += plan.notes.filter(({ why }) => why === 'keep-out').length;
        expectClear(plan);
        for (const { id, wall } of plan.chambers)
          for (const patch of ['deck', 'bottom', 'rail'] as const)
            expect(wall[patch], `${id} ${patch}`).toBeGreaterThanOrEqual(plan.asked[patch]);
        expect(plan.notes.filter(({ why }) => why === 'too-near')).toEqual([]);
      },
    ),
    { seed: SEED, numRuns: BOARDS },
  );
  // The test says nothing where nothing was in the way.
  expect(chambers).toBeGreaterThan(100);
  expect(crossed).toBeGreaterThan(10);
});

describe('on the prone board', () => {
  const job = sampleJob('mere-prone');
  const bare: Job = { ...job, keepOuts: [], jointKeepOuts: [] };
  const chamber = (plan: Plan, id: string) => plan.chambers.find((each) => each.id === id);
  const box = { kind: 'rectangle', name: 'vent', x: 2250, y: -110, length: 80, width: 40 } as const;

  test('a shallow keep-out in the deck is passed under, a deep one gone around', () => {
    const shallow = planOf({ ...bare, keepOuts: [{ ...box, depth: { from: 'deck', deep: 25 } }] });
    const note = shallow.notes.find(({ kind }) => kind === 'lowered');
    expect(note).toMatchObject({ why: 'keep-out', by: ['vent'] });
    expectClear(shallow);
    const through = planOf({ ...bare, keepOuts: [box] });
    expect(
      through.notes.find(({ kind, by }) => (kind === 'split' || kind === 'trimmed') && by.includes('vent')),
    ).toBeDefined();
    expectClear(through);
    const left = (plan: Plan) => plan.chambers.reduce((sum, { volume }) => sum + volume, 0);
    expect(left(shallow)).toBeGreaterThan(left(through));
  });

  test('one drawn on a joint keeps both its faces clear', () => {
    const points = [
      [2000, 50],
      [2080, 50],
      [2080, 90],
      [2000, 90],
    ] as const;
    const plan = planOf({ ...bare, jointKeepOuts: [{ name: 'vent pipe', joint: 'JR2', points }] });
    expectClear(plan);
    expect(plan.notes.some(({ by }) => by.includes('vent pipe'))).toBe(true);
    expect(chamber(plan, 'L1-03')).toEqual(chamber(planOf(bare), 'L1-03'));
  });

  test('one on a joint that is never opened is said, with the joints there are', () => {
    const points = [
      [2000, 50],
      [2080, 50],
      [2080, 90],
    ] as const;
    const plan = planOf({ ...bare, jointKeepOuts: [{ name: 'vent pipe', joint: 'JR1', points }] });
    expect(plan.notes).toContainEqual(
      expect.objectContaining({ kind: 'glue', where: 'vent pipe (JR1)', why: 'no-joint', by: ['JL2', 'JR2'] }),
    );
  });

  test('one that swallows a whole row is said of the row', () => {
    const whole = { kind: 'rectangle', name: 'centre well', x: 2000, y: 60, length: 3990, width: 120 } as const;
    const plan = planOf({ ...bare, keepOuts: [whole] });
    const swallowed = plan.notes.filter(
      ({ kind, why, where }) => kind === 'solid' && why === 'keep-out' && !where.includes('-'),
    );
    expect(swallowed).toContainEqual(expect.objectContaining({ where: 'R1', by: ['centre well'] }));
  });
});
