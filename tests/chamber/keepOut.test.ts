import { Clipper, FillRule } from 'clipper2-ts';
import fc from 'fast-check';
import type { ManifoldToplevel } from 'manifold-3d';
import { beforeAll, describe, expect, test } from 'vitest';
import { heightsAt } from '../../src/chamber/heights.js';
import { keepOutsOn, outlineOf } from '../../src/chamber/keepOut.js';
import type { PlanObstacle } from '../../src/chamber/obstacle.js';
import type { Job } from '../../src/job/job.js';
import { readJob } from '../../src/job/whole/read.js';
import { planOf, type Plan } from '../../src/plan.js';
import { isInside } from '../../src/contour/inside.js';
import { kernel } from '../oracle/kernel.js';
import { drawn, intrusions } from '../oracle/keepOut.js';
import { jobFiles } from '../random/jobFile.js';
import { sampleJob } from '../samples.js';
import { evenly } from '../evenly.js';

const SEED = 20260713;
const BOARDS = 25;
/** Clipper counts in whole numbers: thousandths of a millimetre here. */
const SCALE = 1000;
/** What rounding to thousandths may leave of an overlap, mm². */
const NOTHING = 0.05;
/** What single precision may leave of two solids that touch, mm³. */
const GRAZED = 1;
/** How far the end of a keep-out of some depth may stray between the points it is looked at, mm. */
const HAIR = 0.1;

let k: ManifoldToplevel;
beforeAll(async () => {
  k = await kernel();
});

type Pair = readonly [number, number];

/** Area of the intersection of two outlines, mm², by clipper2-ts. */
function sharedArea(a: readonly Pair[], b: readonly Pair[]): number {
  const path = (pairs: readonly Pair[]) => [
    pairs.map(([x, y]) => ({ x: Math.round(x * SCALE), y: Math.round(y * SCALE) })),
  ];
  const shared = Clipper.intersect(path(a), path(b), FillRule.NonZero);
  return Math.abs(shared.reduce((sum, each) => sum + Clipper.area(each), 0)) / SCALE ** 2;
}

/** Every chamber against every keep-out: solids of manifold-3d in plan, outlines by clipper2-ts on a joint. */
function expectClear(plan: Plan): void {
  for (const keepOut of plan.job.keepOuts)
    for (const { chamber, volume, height } of intrusions(k, plan, keepOut)) {
      const what = `${chamber} in ${keepOut.name}: ${volume.toFixed(1)} mm³`;
      // An end that follows the surface is looked at every few millimetres; between them it strays by a hair.
      if (volume > GRAZED) expect(keepOut.depth ? height : Infinity, what).toBeLessThanOrEqual(HAIR);
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

describe('the outline of a keep-out', () => {
  const disc = { kind: 'disc', name: 'plug', x: 900, y: -40, radius: 30 } as const;
  // By hand: sides that touch a circle; a polygon of 96 of them is larger by tan(π/96) / (π/96).
  test('goes around a disc, and a hair more', () => {
    const outline = outlineOf(disc);
    for (let i = 0; i < outline.length; i++) {
      const [[x0, y0], [x1, y1]] = [outline[i]!, outline[(i + 1) % outline.length]!];
      const off = ((x0 - disc.x) * (y1 - y0) - (y0 - disc.y) * (x1 - x0)) / Math.hypot(x1 - x0, y1 - y0);
      expect(off).toBeCloseTo(disc.radius, 6);
    }
    expect(sharedArea(outline, outline) / (Math.PI * disc.radius ** 2)).toBeCloseTo(1, 3);
  });

  test('is the rectangle about its middle, and the corners as they were given', () => {
    const box = { kind: 'rectangle', name: 'vent', x: 900, y: -40, length: 60, width: 20 } as const;
    expect(outlineOf(box)).toEqual([[870, -50], [930, -50], [930, -30], [870, -30]]); // prettier-ignore
    const points = [[1, 2], [3, 4], [5, 0]] as const; // prettier-ignore
    expect(outlineOf({ kind: 'polygon', name: 'handle', points })).toEqual(points);
  });
});

// Plumb lines every 3 mm, on heights that `heights.test.ts` holds against three-mesh-bvh.
test.each(['deck', 'bottom'] as const)(
  'the inner end of a keep-out from the %s is looked at everywhere, along its outline and within',
  (from) => {
    const job = sampleJob('tarn-rescue');
    const { board, layup } = planOf(job);
    const rectangle = {
      kind: 'rectangle',
      name: 'well',
      x: 1500,
      y: 30,
      length: 300,
      width: 140,
      depth: { from, deep: 20 },
    } as const;
    const polygon = { kind: 'polygon', name: 'flap', points: [[900, -80], [1100, -90], [1010, 60]], depth: { from, deep: 7 } } as const; // prettier-ignore
    const disc = { kind: 'disc', name: 'plug', x: 2200, y: -70, radius: 45, depth: { from, deep: 31 } } as const;
    for (const keepOut of [rectangle, polygon, disc]) {
      const [obstacle] = keepOutsOn(board, layup, { keepOuts: [keepOut], jointKeepOuts: [] }) as PlanObstacle[];
      const points = obstacle!.end!.points;
      const sign = from === 'deck' ? -1 : 1;
      for (const [x, y, z] of points)
        expect(z).toBeCloseTo(heightsAt(board.grid, x, y)![from] + sign * keepOut.depth.deep, 9);
      let within = 0;
      const outline = drawn(keepOut);
      for (let x = 800; x < 2400; x += 3)
        for (let y = -120; y < 120; y += 3) {
          if (!isInside(outline, x, y)) continue;
          within++;
          const near = points.reduce((least, at) => Math.min(least, Math.hypot(at[0] - x, at[1] - y)), Infinity);
          // Half the diagonal between points 6 mm apart, and as much again at an edge.
          expect(near, `${keepOut.name} ${x}, ${y}`).toBeLessThan(6 * Math.SQRT1_2 * 1.5);
        }
      expect(within).toBeGreaterThan(500);
    }
  },
);

test(`no chamber enters a keep-out, on random boards (seed ${SEED}, ${BOARDS} boards)`, () => {
  let chambers = 0;
  let crossed = 0;
  fc.assert(
    fc.property(
      jobFiles,
      fc.array(fc.tuple(evenly(0.1, 0.9), fc.integer({ min: 0, max: 120 }), shape, depth), {
        minLength: 1,
        maxLength: 4,
      }),
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

  // A board with rocker dips in its middle: the end of a keep-out is lowest between its sides, not at them.
  test.each(['tarn-rescue', 'fell-short'] as const)(
    'one of some depth along most of %s is passed under where the deck dips',
    (name) => {
      const sample = sampleJob(name);
      const { length } = sample.board;
      const long = {
        kind: 'rectangle',
        name: 'rail line',
        x: 0.5 * length,
        y: 0,
        length: 0.7 * length,
        width: 400,
      } as const;
      const plan = planOf({ ...sample, keepOuts: [{ ...long, depth: { from: 'deck', deep: 22 } }], jointKeepOuts: [] });
      expect(
        plan.notes.filter(({ kind, by }) => kind === 'lowered' && by.includes('rail line')).length,
      ).toBeGreaterThan(5);
      expectClear(plan);
    },
  );

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
