import { describe, expect, test } from 'vitest';
import type { Chamber } from '../../src/chamber/chamber.js';
import { asRouted } from '../../src/chamber/asRouted.js';
import { carvingIn, chambersIn, chambersOf, drawnPlaces } from '../../src/chamber/chambers.js';
import { measuredInDoubt } from '../../src/chamber/measuredInDoubt.js';
import { gluedJoints } from '../../src/dot/asGlued.js';
import { carvedAround } from '../../src/dot/carvedAround.js';
import { glueOf } from '../../src/dot/glueOf.js';
import type { GluingJob } from '../../src/dot/gluingJob.js';
import { jointFaces } from '../../src/dot/jointFace.js';
import { placedGlue } from '../../src/dot/placedGlue.js';
import type { ChamberSpec } from '../../src/job/job.js';
import type { DotSpec, GluedJointSpec } from '../../src/job/spec/dots.js';
import type { RoutedRow } from '../../src/job/spec/routed.js';
import type { ShapedSpec } from '../../src/job/spec/shaped.js';
import { Past } from '../../src/kept/past.js';
import { layupOf } from '../../src/layup/layupOf.js';
import { board, boardBy, halves, HIGH, LENGTH, LOW, slab, spec, trees } from '../chamber/slabs.js';

const layup = layupOf(halves, LENGTH);
const dotSpec: DotSpec = {
  diameter: 20,
  margin: 15,
  clearance: 5,
  spacing: 400,
  nearEnd: 200,
  may: ['trim', 'split'],
  blank: { nose: 0, tail: 0, below: 0 },
  glued: [],
};

describe('glue as it landed on a slab, by hand', () => {
  const faces = jointFaces(layup);
  const landed = (one: Omit<GluedJointSpec, 'joint'>, joint = 'JC', drawn = board) =>
    gluedJoints(board, faces, trees, { ...dotSpec, glued: [{ joint, ...one }] }, new Past(), drawn);

  test('lies where its height says: from the waterline, the bottom, the deck, or in the middle of the face', () => {
    const dots = [{ z: 30 }, { overBottom: 30 }, { underDeck: 30 }, undefined].map((height, i) => ({
      x: 200 + 100 * i,
      diameter: 20,
      ...(height && { height }),
    }));
    const { joints, notes } = landed({ dots, smears: [] });
    expect(notes).toEqual([]);
    expect(joints.get('JC')!.dots!.map(({ name, from, to, radius }) => [name, from, to, radius])).toEqual(
      [[200, 30], [300, LOW + 30], [400, HIGH - 30], [500, (LOW + HIGH) / 2]].map((at, i) => [`DC.${i + 1}`, at, at, 10]),
    ); // prettier-ignore
    // To the nearer skin, less its radius; a polygon of 16 sides stands around it.
    joints.get('JC')!.dots!.forEach(({ from: [, z], margin }) => {
      const exact = Math.min(HIGH - z, z - LOW) - 10;
      expect(margin).toBeLessThanOrEqual(exact);
      expect(margin).toBeGreaterThan(exact - 0.3);
    });
    // On a board drawn 4 mm lower and 2 mm thinner heights were told over and under that.
    const drawn = boardBy({ ...slab, bottom: () => LOW - 4, thickness: HIGH - LOW - 2 });
    expect(
      landed({ dots, smears: [] }, 'JC', drawn)
        .joints.get('JC')!
        .dots!.map(({ from }) => from[1]),
    ).toEqual([30, LOW - 4 + 30, HIGH - 6 - 30, (LOW + HIGH) / 2 - 5]);
  });

  test('is told where it lies too near to a skin, off its face, or on a joint that is not there', () => {
    const at = (z: number) => ({ x: 300, diameter: 20, height: { z } });
    const said = (...dots: ReturnType<typeof at>[]) => landed({ dots, smears: [] }).notes;
    expect(said(at(50), at(HIGH - 25.4), at(LOW + 25.4))).toEqual([]);
    expect(said(at(50), at(HIGH - 20))).toMatchObject([
      { kind: 'glue', where: 'DC.2', why: 'margin', needs: 15, at: 300 },
    ]);
    expect(said(at(LOW + 5))).toMatchObject([{ where: 'DC.1', why: 'off-face' }]);
    const off = landed({ dots: [at(HIGH + 1), at(50)], smears: [] });
    expect(off.notes).toEqual([{ kind: 'glue', where: 'DC.1', why: 'off-face', by: [], at: 300 }]);
    expect(off.joints.get('JC')!.dots!.map(({ name }) => name)).toEqual(['DC.2']);
    const elsewhere = landed({ smears: [] }, 'JR9');
    expect([elsewhere.joints.size, elsewhere.notes]).toEqual([
      0,
      [{ kind: 'glue', where: 'JR9', why: 'no-joint', by: ['JC'] }],
    ]);
  });

  test('is a smear from one place to another, and none where either is off its face', () => {
    const smear = (z0: number, z1: number) => ({
      from: { x: 300, height: { z: z0 } },
      to: { x: 360, height: { z: z1 } },
      width: 12,
    });
    const { joints, notes } = landed({ smears: [smear(40, 60), smear(40, HIGH + 1), smear(LOW - 1, 60)] });
    expect(joints.get('JC')).toEqual({
      smears: [{ name: 'SC.1', joint: 'JC', from: [300, 40], to: [360, 60], radius: 6 }],
    });
    expect(notes.map(({ where, why, at }) => [where, why, at])).toEqual([
      ['SC.2', 'off-face', 360],
      ['SC.3', 'off-face', 300],
    ]);
  });
});

function glued(dots: Partial<DotSpec>, changed: Partial<ChamberSpec> = {}) {
  const job = {
    chambers: { ...spec, ...changed },
    keepOuts: [],
    jointKeepOuts: [],
    routing: { cutterLength: 5000, guideStock: 12 },
    dots: { ...dotSpec, ...dots },
  } as unknown as GluingJob;
  const carving = carvingIn(board, layup, trees, job);
  const placed = placedGlue(drawnPlaces(carving), board, layup, trees, job);
  const carved = carvedAround(drawnPlaces(carving), carving, placed.keeps, job.dots.clearance);
  const made = glueOf(carved, placed, job.dots.clearance);
  return { ...made, chambers: carved.rows.flatMap(chambersOf), losses: carved.losses };
}
const stretch = ({ profile }: Chamber) => {
  const s = profile.map(([each]) => each);
  return [Math.min(...s), Math.max(...s)] as const;
};
/** Between a chamber and a place on its face, mm; by corners and sides of its profile. */
function apart({ profile }: Chamber, [x, y]: readonly [number, number]): number {
  return Math.min(
    ...profile.map(([ax, ay], i) => {
      const [bx, by] = profile[(i + 1) % profile.length]!;
      const along = ((x - ax) * (bx - ax) + (y - ay) * (by - ay)) / ((bx - ax) ** 2 + (by - ay) ** 2 || 1);
      const share = Math.min(1, Math.max(0, along));
      return Math.hypot(x - ax - share * (bx - ax), y - ay - share * (by - ay));
    }),
  );
}

describe('chambers of a slab around glue, by hand', () => {
  // R1-02 runs from 320 to 580; on the left a web stands at 430 to 470.
  const dot = { x: 450, diameter: 20, height: { z: 50 } };
  const one: GluedJointSpec = { joint: 'JC', dots: [dot], smears: [] };

  test('are split by a dot, a web apart, and only those it stands in', () => {
    const { chambers, losses, glue, notes } = glued({ glued: [one], may: ['split'] });
    const [before, after] = chambers.filter(({ id }) => id.startsWith('R1-02'));
    expect([before!.id, after!.id]).toEqual(['R1-02a', 'R1-02b']);
    expect(stretch(before!)[1]).toBeCloseTo(430, 0);
    expect(stretch(after!)[0]).toBeCloseTo(470, 0);
    expect(losses).toMatchObject([{ row: 'R1', place: 'R1-02', by: ['DC.1'] }]);
    expect(losses[0]!.after / losses[0]!.before).toBeCloseTo(220 / 260, 1);
    expect(chambers.filter(({ row }) => row === 'L1').map((each) => stretch(each).map(Math.round))).toEqual([[170, 430], [470, 730], [770, 1030]]); // prettier-ignore
    expect(glue.dots).toMatchObject([{ id: 'DC.1', joint: 'JC', x: 450, s: 450, z: 50, diameter: 20, glued: true }]);
    expect(notes.filter(({ kind }) => kind === 'glue')).toEqual([]);
  });

  test.each([[['trim']], [['split']], [['trim', 'split']]] as DotSpec['may'][][])(
    'keep their clearance, whatever they may: %j',
    (may) => {
      for (const z of [30, 50, 70]) {
        const smear = { from: { x: 690, height: { z: 30 } }, to: { x: 760, height: { z } }, width: 12 };
        const { chambers } = glued({
          glued: [{ joint: 'JC', dots: [{ ...dot, height: { z } }], smears: [smear] }],
          may,
        });
        expect(chambers.length).toBeGreaterThan(5);
        for (const chamber of chambers) {
          expect(apart(chamber, [450, z]), chamber.id).toBeGreaterThan(15 - 1e-4);
          for (const share of [0, 0.25, 0.5, 0.75, 1])
            expect(apart(chamber, [690 + 70 * share, 30 + (z - 30) * share]), chamber.id).toBeGreaterThan(11 - 1e-4);
        }
      }
    },
  );

  test('swallow a dot whole where they may, and say so', () => {
    const { chambers, notes, losses, glue } = glued({ glued: [one], may: ['swallow'] });
    expect(chambers.filter(({ id }) => id.startsWith('R1-02')).map((each) => stretch(each).map(Math.round))).toEqual([[320, 580]]); // prettier-ignore
    expect(notes).toContainEqual({ kind: 'glue', where: 'DC.1', why: 'swallowed', by: ['R1-02'], at: 450 });
    expect(losses).toEqual([]);
    expect(glue.dots[0]!.sides).toContainEqual(expect.objectContaining({ row: 'R1', way: 'swallowed' }));
    // Not one that would be cut through: at the end of the chamber it is kept off.
    const cut = glued({ glued: [{ ...one, dots: [{ ...dot, x: 572 }] }], may: ['swallow'] });
    for (const chamber of cut.chambers) expect(apart(chamber, [572, 50])).toBeGreaterThan(15 - 1e-4);
  });

  test('have their dots planned on webs that both sides share, near enough to each other and to the ends', () => {
    const { glue, losses, notes } = glued({}, { stagger: 0 });
    // Webs at 300, 600, 900; what is left solid at the ends takes the first and the last.
    const xs = glue.dots.map(({ x }) => x);
    for (const web of [300, 600, 900])
      expect(
        xs.filter((x) => Math.abs(x - web) <= 5),
        `${web}`,
      ).toHaveLength(1);
    expect(Math.max(...xs.slice(1).map((x, i) => x - xs[i]!))).toBeLessThanOrEqual(400);
    expect(Math.max(xs[0]!, LENGTH - xs.at(-1)!)).toBeLessThan(250);
    expect([losses, notes.filter(({ kind }) => kind === 'glue')]).toEqual([[], []]);
    for (const { margin, glued: isGlued } of glue.dots) {
      expect(margin).toBeGreaterThanOrEqual(15);
      expect(isGlued).toBe(false);
    }
  });
});

const carvingBy = (chambers: ChamberSpec) =>
  ({
    chambers,
    keepOuts: [],
    jointKeepOuts: [],
    routing: { cutterLength: 5000, guideStock: 12 },
  }) as unknown as Parameters<typeof chambersIn>[3];

describe('rows of a slab that are routed', () => {
  const job = carvingBy(spec);
  const then = chambersIn(board, layup, trees, { ...job, chambers: { ...spec, deckSkin: 30, web: 80 } });
  const now = chambersIn(board, layup, trees, job);
  const face = layup.rows.find(({ id }) => id === 'R1')!.face;
  const made = (more: Partial<RoutedRow> = {}): RoutedRow => ({
    row: 'R1',
    day: '2026-11-26',
    face,
    chambers: then.chambers.filter(({ row }) => row === 'R1'),
    ...more,
  });
  const kept = (...rows: RoutedRow[]) => asRouted(now, rows, layup.rows, board, trees);

  test('keep their cuts, their walls measured anew, and nothing is said of them but that', () => {
    const all = kept(made());
    const cuts = (chambers: readonly Chamber[]) =>
      chambers.map(({ id, profile, depth, volume }) => ({ id, profile, depth, volume }));
    expect(cuts(all.chambers.filter(({ row }) => row === 'R1'))).toEqual(cuts(made().chambers as Chamber[]));
    expect(all.chambers.filter(({ row }) => row === 'L1')).toEqual(now.chambers.filter(({ row }) => row === 'L1'));
    for (const { wall } of all.chambers.filter(({ row }) => row === 'R1')) expect(wall.deck).toBeCloseTo(31, 0);
    expect(all.webs.filter(({ row }) => row === 'R1').map(({ from, to }) => Math.round(to - from))).toEqual([
      80, 80, 80,
    ]);
    expect(now.notes.some(({ row }) => row === 'R1')).toBe(true);
    expect(all.notes.filter(({ row }) => row === 'R1')).toEqual([
      { kind: 'rout', where: 'R1', row: 'R1', why: 'kept', by: ['2026-11-26'] },
    ]);
    expect(kept()).toBe(now);
  });

  test('are told where their row is gone, or its face elsewhere, and then planned as if they were not', () => {
    const why = (more: Partial<RoutedRow>) => {
      const all = kept(made(more));
      const [note] = all.notes.filter(({ by }) => by[0] === '2026-11-26');
      if (note!.why !== 'kept') expect(all.chambers).toEqual(now.chambers);
      return [note!.where, note!.why, note!.row];
    };
    const [c, s] = [Math.cos(2e-5), Math.sin(2e-5)];
    expect(why({ row: 'R9' })).toEqual(['R9', 'gone', undefined]);
    expect(why({ face: { ...face, origin: [0, 0.02] } })).toEqual(['R1', 'elsewhere', 'R1']);
    expect(why({ face: { ...face, along: [c, s] } })).toEqual(['R1', 'elsewhere', 'R1']);
    expect(why({ face: { ...face, origin: [0, 0.005] } })).toEqual(['R1', 'kept', 'R1']);
  });
});

describe('what was measured on a slab', () => {
  const chamber = { id: 'R1-01', wall: { deck: 13, bottom: 11, rail: 31 } } as Chamber;
  const told = (...shaped: ShapedSpec[]) =>
    measuredInDoubt(shaped, { board, chambers: [chamber] }, 'mm').map(({ where, what }) => [where.path, what]);
  const thick = (value: number, x = 300): ShapedSpec => ({ kind: 'thickness', x, y: 50, value, off: 'deck' });
  const wide = (value: number): ShapedSpec => ({ kind: 'width', x: 400, value });

  // 90 thick: 3 mm or 8 hundredths, 7.2; 600 wide: 10 mm or 3 hundredths, 18; a wall of 13: 3 mm or 4 tenths, 5.2.
  test('is told where it is off by more than shaping strays, and not before', () => {
    expect(told(thick(97.1), thick(82.9), wide(617.9), wide(582.1))).toEqual([]);
    expect(told(thick(97.3))).toEqual([['shaped[0].thickness', '97.3 mm is 7.3 mm more than is drawn there']]);
    expect(told(thick(90), thick(82.7))).toEqual([
      ['shaped[1].thickness', '82.7 mm is 7.3 mm less than is drawn there'],
    ]);
    expect(told(wide(618.1)).map(([path]) => path)).toEqual(['shaped[0].width']);
    const wall = (value: number, of = 'R1-01'): ShapedSpec => ({ kind: 'wall', chamber: of, wall: 'deck', value });
    expect(told(wall(18.1), wall(7.9))).toEqual([]);
    expect(told(wall(18.3)).map(([path]) => path)).toEqual(['shaped[0].deck']);
    // What is not on the board, or of no chamber, is not held against it.
    expect(told(wall(90, 'R9-99'), { ...thick(20), y: 400 } as ShapedSpec)).toEqual([]);
  });

  test('is told where it differs from four others of its kind by far more than they from each other', () => {
    const like = [90.5, 90.6, 90.5, 90.4].map((value, i) => thick(value, 300 + 100 * i));
    const [[path, what]] = told(...like, thick(87, 800)) as [[string, string]];
    expect(path).toBe('shaped[4].thickness');
    expect(what).toMatch(/^87(\.0)? mm is 3(\.0)? mm less than is drawn there; the others differ by about 0\.5 mm$/);
    expect(told(...like.slice(1), thick(87, 800))).toEqual([]);
    expect(told(...like.slice(1), wide(600), wide(601), thick(87, 800))).toEqual([]);
    expect(told(...like, thick(89.5, 800))).toEqual([]);
  });
});
