import { easeCorners } from '../../src/contour/ease.js';
import { Clipper, FillRule } from 'clipper2-ts';
import fc from 'fast-check';
import { beforeAll, describe, expect, test } from 'vitest';
import type { Chamber } from '../../src/chamber/chamber.js';
import type { Job } from '../../src/job/job.js';
import { planOf, type Plan } from '../../src/plan.js';
import { familyOf } from '../../src/rout/family.js';
import { levelled, longestRun } from '../../src/rout/inscribed.js';
import { sampleJob } from '../samples.js';
import { evenly } from '../evenly.js';

const SEED = 20261126;

type Pair = readonly [number, number];

function chamberOf(id: string, corners: readonly Pair[], deep: number): Chamber {
  const eased = easeCorners(corners, 6)!;
  const none = [0, 0, 0] as const;
  return {
    id,
    row: 'R1',
    place: 1,
    ...eased,
    depth: [0, deep],
    wall: { deck: 10, bottom: 10, rail: 10 },
    at: { deck: none, bottom: none, rail: none },
    volume: 1,
  };
}
const box = (length: number, height: number): Pair[] => [
  [0, 0],
  [length, 0],
  [length, height],
  [0, height],
];
const spec = { smallest: { length: 30, height: 20, depth: 20 }, cutterDiameter: 12 };

describe('the longest level rectangle in a chamber', () => {
  test('of a rectangle is itself, also when it lies aslant', () => {
    // Guides are turned by whole tenths of a degree.
    const turn = (5.7 * Math.PI) / 180;
    const [c, s] = [Math.cos(turn), Math.sin(turn)];
    const aslant = box(200, 60).map(([x, y]): Pair => [400 + x * c - y * s, 30 + x * s + y * c]);
    const run = longestRun(levelled(easeCorners(aslant, 6)!.contour), 59.99)!;
    expect(run.to - run.from).toBeGreaterThan(199);
    expect(run.to - run.from).toBeLessThanOrEqual(200 + 1e-6);
    expect(longestRun(levelled(easeCorners(aslant, 6)!.contour), 61)).toBeUndefined();
  });

  // By similar triangles: a wedge from height 80 to 40 over 200 holds a height h on 200·(80 − h)/40 of its length.
  test('of a wedge is what similar triangles say', () => {
    const wedge: Pair[] = [
      [0, 0],
      [200, 20],
      [200, 60],
      [0, 80],
    ];
    for (const height of [45, 60, 70]) {
      const run = longestRun(levelled(easeCorners(wedge, 6)!.contour), height)!;
      const expected = (200 * (80 - height)) / 40;
      expect(run.to - run.from).toBeGreaterThan(expected - 1.01);
      expect(run.to - run.from).toBeLessThanOrEqual(expected + 1e-6);
    }
  });
});

const corners = (4 - Math.PI) * 36;
/** What a chamber takes of its face, mm²: a tenth of a millimetre longer and higher than the guide that is its own. */
const wholeOf = ([l, h]: Pair): number => (l + 0.1) * (h + 0.1) - corners;

/**
 * Brute force over all rectangles of whole millimetres that have some chamber's length and some chamber's height, mm³:
 * for rectangular chambers no other can be best.
 */
function leastLost(sizes: readonly Pair[], depths: readonly number[], count: number): number {
  const all = [...new Set(sizes.map(([l]) => l))].flatMap((l) =>
    [...new Set(sizes.map(([, h]) => h))].map((h): Pair => [l, h]),
  );
  let best = Infinity;
  const pick = (from: number, chosen: Pair[]): void => {
    if (chosen.length === Math.min(count, all.length)) {
      const lost = sizes.reduce((sum, own, i) => {
        const fitting = chosen.filter(([l, h]) => l <= own[0] && h <= own[1]);
        const most = Math.max(...fitting.map(([l, h]) => l * h - corners));
        return sum + (wholeOf(own) - most) * depths[i]!;
      }, 0);
      best = Math.min(best, lost);
      return;
    }
    for (let c = from; c < all.length; c++) pick(c + 1, [...chosen, all[c]!]);
  };
  pick(0, []);
  return best;
}

/** Length, height and depth of a few chambers, whole mm. */
const boxes = fc.array(
  fc.tuple(fc.integer({ min: 40, max: 220 }), fc.integer({ min: 22, max: 90 }), fc.integer({ min: 20, max: 60 })),
  { minLength: 2, maxLength: 5 },
);

describe('a family of guides', () => {
  const sizes: Pair[] = [
    [200, 60],
    [180, 80],
    [120, 40],
    [90, 75],
    [150, 55],
    [60, 30],
  ];
  const depths = [40, 50, 30, 60, 20, 35];
  // A tenth of a millimetre longer and higher: that much a guide may stand off when it is set to tenths.
  const chambers = sizes.map(([l, h], i) => chamberOf(`R1-0${i + 1}`, box(l + 0.1, h + 0.1), depths[i]!));

  test.each([1, 2, 3, 4])('of %i is the best there is, by brute force', (count) => {
    const { curve } = familyOf(chambers, { kind: 'count', count }, spec, 'mm');
    const point = curve[count - 1]!;
    expect(point.guides).toBe(count);
    expect(point.lost).toBeCloseTo(leastLost(sizes, depths, count) / 1e6, 9);
    expect(point.bound).toBeLessThanOrEqual(point.lost);
    expect(point.bound).toBeGreaterThan(point.lost - 1e-4);
  });

  test('loses no more than the setting takes when each of these chambers has its own', () => {
    const { curve } = familyOf(chambers, { kind: 'count', count: 6 }, spec, 'mm');
    const slack = sizes.reduce((sum, [l, h], i) => sum + (0.1 * l + 0.1 * h + 0.01) * depths[i]!, 0) / 1e6;
    expect(curve[5]!.lost).toBeCloseTo(slack, 9);
  });

  test(`asked for by a share it is the fewest that keep within it, by brute force (seed ${SEED})`, () => {
    fc.assert(
      fc.property(boxes, evenly(0, 0.4), (drawn, share) => {
        const [some, deep] = [drawn.map(([l, h]): Pair => [l, h]), drawn.map(([, , depth]) => depth)];
        const made = some.map(([l, h], i) => chamberOf(`R1-0${i + 1}`, box(l + 0.1, h + 0.1), deep[i]!));
        const { cuts, lost } = familyOf(made, { kind: 'loss', share }, spec, 'mm');
        const total = some.reduce((sum, own, i) => sum + wholeOf(own) * deep[i]!, 0);
        const shares = some.map((_, i) => leastLost(some, deep, i + 1) / total);
        const enough = shares.findIndex((each) => each <= share + 1e-12);
        const used = new Set(cuts.map(({ size }) => size)).size;
        // Where a guide for each of them still loses too much, as many as save anything.
        const fewest = enough >= 0 ? enough + 1 : new Set(some.map(String)).size;
        expect(used).toBe(fewest);
        expect(lost).toBeCloseTo(shares[fewest - 1]!, 9);
      }),
      { seed: SEED, numRuns: 60 },
    );
  });

  test('the curve goes to eight guides at least, and no further than they save anything', () => {
    const lengths = Array.from({ length: 12 }, (_, i): Pair => [60 + 13 * i, 30 + 4 * i]);
    const twelve = lengths.map(([l, h], i) => chamberOf(`R1-${10 + i}`, box(l + 0.1, h + 0.1), 40));
    const guidesOf = (asked: Parameters<typeof familyOf>[1], some = twelve) =>
      familyOf(some, asked, spec, 'mm').curve.map(({ guides }) => guides);
    const upTo = (count: number) => Array.from({ length: count }, (_, i) => i + 1);
    expect(guidesOf({ kind: 'count', count: 3 })).toEqual(upTo(8));
    expect(guidesOf({ kind: 'count', count: 8 })).toEqual(upTo(8));
    expect(guidesOf({ kind: 'count', count: 10 })).toEqual(upTo(10));
    // Each has its own with twelve; six chambers are served by six.
    expect(guidesOf({ kind: 'count', count: 30 })).toEqual(upTo(12));
    expect(guidesOf({ kind: 'count', count: 2 }, twelve.slice(0, 6))).toEqual(upTo(6));
    expect(guidesOf({ kind: 'count', count: 2 }, [])).toEqual([]);
    expect(familyOf([], { kind: 'count', count: 2 }, spec, 'mm')).toMatchObject({ cuts: [], lost: 0 });
  });

  test('a chamber smaller than the smallest, or than its cutter, keeps its own', () => {
    const little = [
      chamberOf('a', box(29.9, 40), 40),
      chamberOf('b', box(60, 19.9), 40),
      chamberOf('c', box(60.1, 40.1), 40),
    ];
    const { cuts } = familyOf(little, { kind: 'count', count: 1 }, spec, 'mm');
    expect(cuts.map(({ size }) => size)).toEqual([undefined, undefined, { length: 60, height: 40 }]);
    // A cutter of 44 mm cuts nothing lower.
    const wide = familyOf(little, { kind: 'count', count: 1 }, { ...spec, cutterDiameter: 44 }, 'mm');
    expect(wide.cuts.map(({ size }) => size)).toEqual([undefined, undefined, undefined]);
    // In sixteenths of an inch: 37 of them are 58.7 mm, 25 are 39.7 mm.
    const inches = familyOf([chamberOf('c', box(60.6, 41.6), 40)], { kind: 'count', count: 1 }, spec, 'in');
    expect(inches.cuts[0]!.size!.length / (25.4 / 16)).toBeCloseTo(37, 9);
    expect(inches.cuts[0]!.size!.height / (25.4 / 16)).toBeCloseTo(25, 9);
  });

  test('chambers that are mirror images have the same guide, and lose as much as each by itself', () => {
    const one = familyOf(chambers, { kind: 'count', count: 3 }, spec, 'mm');
    const two = familyOf([...chambers, ...chambers], { kind: 'count', count: 3 }, spec, 'mm');
    expect(two.curve[2]!.lost).toBeCloseTo(2 * one.curve[2]!.lost, 9);
    const of = two.cuts.map(({ size }) => size);
    expect(of.slice(0, chambers.length)).toEqual(of.slice(chambers.length));
  });
});

describe('on the rescue board with six shared guides', () => {
  let job: Job;
  let own: Plan;
  let shared: Plan;
  beforeAll(() => {
    job = sampleJob('tarn-rescue');
    own = planOf({ ...job, routing: withoutGuides(job.routing) });
    shared = planOf({ ...job, routing: { ...job.routing, guides: { kind: 'count', count: 6 } } });
  });
  const withoutGuides = ({ cutterLength, bush, guideStock, passDepth }: Job['routing']): Job['routing'] => ({
    cutterLength,
    bush,
    guideStock,
    passDepth,
  });

  test('every chamber is cut within the chamber it had of its own (clipper2-ts: nothing sticks out)', () => {
    const path = (pairs: readonly Pair[]) => [
      pairs.map(([x, y]) => ({ x: Math.round(x * 1000), y: Math.round(y * 1000) })),
    ];
    expect(shared.chambers.map(({ id }) => id)).toEqual(own.chambers.map(({ id }) => id));
    shared.chambers.forEach(({ id, contour }, i) => {
      const corners = contour.map(({ x, y }): Pair => [x, y]);
      const out = Clipper.difference(path(corners), path(own.chambers[i]!.profile), FillRule.NonZero);
      const area = Math.abs(out.reduce((sum, each) => sum + Clipper.area(each), 0)) / 1e6;
      expect(area, id).toBeLessThan(0.05);
    });
  });

  test('every chamber keeps its walls, every chamber with a setting has a guide, and each guide is made once', () => {
    for (const { id, wall } of shared.chambers)
      for (const patch of ['deck', 'bottom', 'rail'] as const)
        expect(wall[patch], `${id} ${patch}`).toBeGreaterThanOrEqual(shared.asked[patch]);
    const { guides, settings } = shared.routing;
    expect(guides.length).toBeLessThanOrEqual(6);
    // Named from the largest on, each for some chamber.
    expect(guides.map(({ id }) => id)).toEqual(guides.map((_, i) => `G${i + 1}`));
    const areas = guides.map(({ cut }) => cut.length * cut.height);
    expect(areas).toEqual([...areas].sort((a, b) => b - a));
    for (const guide of guides) expect(guide.chambers.length, guide.id).toBeGreaterThan(0);
    for (const { chamber, guide } of settings)
      expect(guides.find(({ id }) => id === guide)!.chambers, chamber).toContain(chamber);
    expect(guides.flatMap((guide) => guide.chambers).sort()).toEqual(settings.map(({ chamber }) => chamber).sort());
    const said = shared.notes.filter(({ kind }) => kind === 'guide').map(({ where }) => where);
    expect([...said, ...settings.map(({ chamber }) => chamber)].sort()).toEqual(
      shared.chambers.map(({ id }) => id).sort(),
    );
  });

  test('the curve falls with every guide, and its bound proves it within a thousandth', () => {
    const { curve } = shared.routing;
    curve.slice(1).forEach(({ lost }, i) => expect(lost).toBeLessThanOrEqual(curve[i]!.lost));
    for (const { lost, bound } of curve) expect(bound).toBeGreaterThan(0.999 * lost);
  });

  test('what more guides than it allows would still lose is said, and what they lose is as said', () => {
    const plan = planOf({ ...job, routing: { ...job.routing, guides: { kind: 'loss', share: 0.03 } } });
    const [note] = plan.notes.filter(({ why }) => why === 'share');
    const volume = ({ chambers }: Plan) => chambers.reduce((sum, each) => sum + each.volume, 0);
    const lost = 100 * (1 - volume(plan) / volume(own));
    expect(lost).toBeGreaterThan(3);
    expect(Math.abs(Number.parseFloat(note!.by[0]!) - lost)).toBeLessThan(0.3);
    expect(plan.routing.curve[plan.routing.guides.length - 1]!.bound).toBeGreaterThan(0.03 * volume(own));
    const enough = planOf({ ...job, routing: { ...job.routing, guides: { kind: 'loss', share: 0.2 } } });
    expect(enough.notes.some(({ why }) => why === 'share')).toBe(false);
  });

  test('what the curve says is lost is what the chambers lost', () => {
    const volume = (plan: Plan) => plan.chambers.reduce((sum, chamber) => sum + chamber.volume, 0);
    const kept = shared.notes.filter(({ kind }) => kind === 'guide').length;
    expect(kept).toBeLessThan(5);
    expect(volume(own) - volume(shared)).toBeCloseTo(shared.routing.curve[5]!.lost, 1);
  });
});
