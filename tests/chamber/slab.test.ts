import { describe, expect, test } from 'vitest';
import type { Chamber, Note } from '../../src/chamber/chamber.js';
import { chambersIn, type Chambers } from '../../src/chamber/chambers.js';
import { goesThrough } from '../../src/chamber/through.js';
import { heightsAt } from '../../src/chamber/measured.js';
import type { ChamberSpec, GlueUpSpec, KeepOutSpec } from '../../src/job/job.js';
import { layupOf } from '../../src/layup/layupOf.js';
import { surfaceBy } from '../board/formulas.js';
import { board, HALF, halves, HIGH, LENGTH, LOW, open, spec, trees } from './slabs.js';

/** How near the walls are met, mm: chambers grow by steps, and are proved. */
const MET = 0.3;

interface Asked {
  readonly spec?: Partial<ChamberSpec>;
  readonly glueUp?: GlueUpSpec;
  readonly keepOuts?: readonly KeepOutSpec[];
  readonly cutterLength?: number;
}
function chambersBy({ spec: changed, glueUp = halves, keepOuts = [], cutterLength = 5000 }: Asked): Chambers {
  const job = {
    chambers: { ...spec, ...changed },
    keepOuts,
    jointKeepOuts: [],
    routing: { cutterLength, guideStock: 12, bush: 20, passDepth: 12 },
  };
  return chambersIn(board, layupOf(glueUp, LENGTH), trees, job as unknown as Parameters<typeof chambersIn>[3]);
}
const onRow = ({ chambers }: Chambers, row: string) => chambers.filter((chamber) => chamber.row === row);
const boxOf = ({ profile, depth }: Chamber) => {
  const [s, z] = [0, 1].map((axis) => profile.map((pair) => pair[axis as 0 | 1]));
  return { s: [Math.min(...s!), Math.max(...s!)], z: [Math.min(...z!), Math.max(...z!)], depth: depth[1] };
};
/** No more than is asked, and hardly less. */
function near(value: number, exact: number, what: string): void {
  expect(Math.abs(value - exact), `${what}: ${value}, not ${exact}`).toBeLessThan(MET);
}
function isBox(chamber: Chamber, s: [number, number], z: [number, number], depth: number): void {
  const box = boxOf(chamber);
  [0, 1].forEach((end) => {
    near(box.s[end]!, s[end]!, `${chamber.id} s`);
    near(box.z[end]!, z[end]!, `${chamber.id} z`);
  });
  near(box.depth, depth, `${chamber.id} depth`);
}
const said = ({ notes }: Chambers, where: string): Partial<Note>[] => notes.filter((note) => note.where === where);
/** From skin to skin and to the rail wall, each with the tolerance. */
const Z: [number, number] = [LOW + 10 + 1, HIGH - 12 - 1];
const TO_RAIL = HALF - 30 - 1;

describe('in a slab chambers are boxes, by hand', () => {
  test('from skin to skin and to the rail, a web apart, and no nearer to the tips than is left solid', () => {
    const made = chambersBy({});
    // The right row sits on the marks 150, 450, 750, 1050, the left half a pitch on: at 300, 600, 900.
    const stretches: Record<string, [number, number][]> = {
      R1: [[60, 280], [320, 580], [620, 880], [920, 1120]],
      L1: [[170, 430], [470, 730], [770, 1030]],
    }; // prettier-ignore
    for (const [row, expected] of Object.entries(stretches)) {
      expect(onRow(made, row).map(({ id }) => id)).toEqual(expected.map((_, i) => `${row}-0${i + 1}`));
      onRow(made, row).forEach((chamber, i) => isBox(chamber, expected[i]!, Z, TO_RAIL));
    }
    for (const { wall, at, volume, profile, depth } of made.chambers) {
      near(wall.deck, 13, 'deck');
      near(wall.bottom, 11, 'bottom');
      near(wall.rail, 31, 'rail');
      for (const patch of ['deck', 'bottom', 'rail'] as const)
        expect(wall[patch]).toBeGreaterThanOrEqual(made.asked[patch]);
      expect(at.deck[2]).toBeCloseTo(HIGH, 6);
      expect(at.bottom[2]).toBeCloseTo(LOW, 6);
      expect(Math.abs(at.rail[1])).toBeCloseTo(HALF, 6);
      // Litres: the profile's area, its corners eased by the cutter's radius of 5, times the depth.
      const box = boxOf({ profile, depth } as Chamber);
      const area = (box.s[1]! - box.s[0]!) * (box.z[1]! - box.z[0]!) - (4 - Math.PI) * 25;
      expect(volume / ((area * depth[1]) / 1e6)).toBeCloseTo(1, 3);
    }
    expect(made.asked).toEqual({ deck: 13, bottom: 11, rail: 31 });
    expect(made.webs).toHaveLength(5);
    for (const { from, to } of made.webs) near(to - from, 40, 'web');
    expect(made.notes).toMatchObject([
      { kind: 'trimmed', where: 'R1-01', why: 'ends' },
      { kind: 'trimmed', where: 'R1-04', why: 'ends' },
    ]);
    expect(made.notes.map(({ shorter }) => Math.round(shorter!))).toEqual([40, 60]);
  });

  test('walls, skins, tolerance each take what they say, and nothing of another', () => {
    const change = (changed: Partial<ChamberSpec>) => onRow(chambersBy({ spec: changed }), 'R1')[1]!;
    const plain = boxOf(change({}));
    const [s, z, depth] = [plain.s as [number, number], Z, TO_RAIL];
    isBox(change({ deckSkin: 20 }), s, [z[0], z[1] - 8], depth);
    isBox(change({ bottomSkin: 20 }), s, [z[0] + 10, z[1]], depth);
    isBox(change({ railWall: 50 }), s, z, depth - 20);
    isBox(change({ tolerance: 3 }), s, [z[0] + 2, z[1] - 2], depth - 2);
    isBox(change({ web: 60 }), [s[0] + 10, s[1] - 10], z, depth);
    isBox(change({ datum: 160 }), [s[0] + 10, s[1] + 10], z, depth);
  });

  test('a solid member is left a floor, a bonded open one is gone through', () => {
    const glueUp = (routing: 'open' | 'solid'): GlueUpSpec => ({
      centreJoint: 'dotted',
      right: [
        open({ thickness: 120 }),
        open({ kind: 'stringer', thickness: 20, joint: 'bonded', routing }),
        open({ joint: 'bonded' }),
      ],
    });
    const solid = onRow(chambersBy({ glueUp: glueUp('solid') }), 'R1');
    expect(solid.length).toBe(4);
    for (const chamber of solid) near(chamber.depth[1], 120 - 8, 'floor');
    for (const chamber of onRow(chambersBy({ glueUp: glueUp('open') }), 'R1'))
      near(chamber.depth[1], TO_RAIL, 'through');
    const thick = chambersBy({ glueUp: glueUp('solid'), spec: { floor: 25 } });
    for (const chamber of onRow(thick, 'R1')) near(chamber.depth[1], 95, 'floor 25');
  });

  test('a piece between two faces is gone through, or keeps its floor where the cutter comes not so far', () => {
    const glueUp: GlueUpSpec = { centreJoint: 'dotted', right: [open({ thickness: 130 }), open()] };
    const through = chambersBy({ glueUp });
    const inner = layupOf(glueUp, LENGTH).rows.find(({ id }) => id === 'R1')!;
    for (const chamber of onRow(through, 'R1')) {
      expect(chamber.depth[1]).toBeCloseTo(130, 6);
      expect(goesThrough(chamber, inner)).toBe(true);
      expect(goesThrough({ ...chamber, depth: [0, 129.9] }, inner)).toBe(false);
      expect(goesThrough({ ...chamber, depth: [1, 130] }, inner)).toBe(false);
    }
    expect(through.notes.filter(({ why }) => why === 'blind')).toEqual([]);
    // Where a keep-out stands before the far face, the floor is left before that, or more.
    const plug: KeepOutSpec = { name: 'plug', kind: 'rectangle', x: 450, y: 118, length: 400, width: 10 };
    const blind = onRow(chambersBy({ glueUp, keepOuts: [plug] }), 'R1').filter(({ depth }) => depth[1] < 130);
    expect(blind.length).toBeGreaterThan(0);
    for (const { depth } of blind) expect(depth[1]).toBeLessThanOrEqual(113);
    const behind: KeepOutSpec = { ...plug, y: 127.5, width: 3 };
    const floored = onRow(chambersBy({ glueUp, keepOuts: [behind] }), 'R1').filter(({ depth }) => depth[1] < 130);
    expect(floored.length).toBeGreaterThan(0);
    for (const { depth } of floored) near(depth[1], 130 - 8, 'floor');
    for (const chamber of onRow(through, 'R2')) near(chamber.depth[1], TO_RAIL - 130, 'outer');
    // What goes right through is routed from both faces; a blind row goes no deeper than its cutter.
    const short = chambersBy({ glueUp, cutterLength: 92 });
    for (const chamber of onRow(short, 'R2')) near(chamber.depth[1], 80, 'cutter');
    expect(said(short, 'R2')).toMatchObject([{ kind: 'rout', why: 'cut-short', has: 92 }]);
    // Depths are looked at no more than 5 mm apart.
    expect(said(short, 'R2')[0]!.needs!).toBeLessThan(TO_RAIL - 130 + 12 + MET);
    expect(said(short, 'R2')[0]!.needs!).toBeGreaterThan(TO_RAIL - 130 + 12 - 5);
    expect(said(through, 'R2')).toEqual([]);
  });

  test('a row nowhere as deep as the smallest chamber has no places, and one too low or short for it says why', () => {
    const narrow: GlueUpSpec = { centreJoint: 'dotted', right: [open({ thickness: 265 }), open({ joint: 'dotted' })] };
    const made = chambersBy({ glueUp: narrow, spec: { smallest: { length: 40, height: 15, depth: 60 } } });
    expect(onRow(made, 'R2')).toEqual([]);
    expect(made.notes.filter(({ row }) => row === 'R2')).toEqual([
      { kind: 'solid', where: 'R2', row: 'R2', why: 'shallow', by: [] },
    ]);
    const low = chambersBy({ spec: { smallest: { length: 40, height: 70, depth: 15 } } });
    expect(low.chambers).toEqual([]);
    expect(low.notes.filter(({ row, why }) => row === 'R1' && why === 'room')).toHaveLength(4);
    const long = chambersBy({ spec: { smallest: { length: 240, height: 15, depth: 15 } } });
    for (const row of ['L1', 'R1'])
      for (const chamber of onRow(long, row))
        expect(boxOf(chamber).s[1]! - boxOf(chamber).s[0]!).toBeGreaterThanOrEqual(240);
    expect(long.notes.filter(({ why }) => why === 'ends').length).toBe(2);
  });
});

describe('a keep-out in a slab', () => {
  const rowOf = (keepOuts: readonly KeepOutSpec[], changed: Partial<ChamberSpec> = {}) => {
    const made = chambersBy({ keepOuts, spec: { stagger: 0, ...changed } });
    return { made, row: onRow(made, 'R1') };
  };
  const rectangle = (
    x: number,
    length: number,
    y: number,
    width: number,
    depth?: KeepOutSpec['depth'],
  ): KeepOutSpec => ({
    name: 'plug',
    kind: 'rectangle',
    x,
    y,
    length,
    width,
    ...(depth && { depth }),
  });

  test('right through parts the chamber that it stands in, a web to each side of nothing but itself', () => {
    const { made, row } = rowOf([rectangle(450, 20, 150, 20)]);
    const [before, after] = row.filter(({ place }) => place === 2);
    expect([before!.id, after!.id]).toEqual(['R1-02a', 'R1-02b']);
    near(boxOf(before!).s[0]!, 320, 'from');
    near(boxOf(after!).s[1]!, 580, 'to');
    // Neither enters it, and between them stands at least a web.
    expect(boxOf(before!).s[1]!).toBeLessThanOrEqual(440);
    expect(boxOf(after!).s[0]!).toBeGreaterThanOrEqual(460);
    near(boxOf(after!).s[0]! - boxOf(before!).s[1]!, 40, 'web');
    expect(said(made, 'R1-02')).toMatchObject([{ kind: 'split', why: 'keep-out', by: ['plug'] }]);
    expect(row.filter(({ place }) => place !== 2)).toHaveLength(3);
  });

  test('at the end of a chamber trims it, over all of it leaves it solid, beside the row changes nothing', () => {
    const { made, row } = rowOf([rectangle(560, 60, 150, 20)]);
    near(boxOf(row.find(({ place }) => place === 2)!).s[1]!, 530, 'trimmed');
    expect(said(made, 'R1-02')).toMatchObject([{ kind: 'trimmed', why: 'keep-out', by: ['plug'] }]);
    const all = rowOf([rectangle(450, 400, 100, 220)]);
    expect(all.row.filter(({ place }) => place === 2)).toEqual([]);
    expect(said(all.made, 'R1-02')).toMatchObject([{ kind: 'solid', why: 'keep-out', by: ['plug'] }]);
    expect(rowOf([rectangle(450, 400, -150, 200)]).row).toEqual(rowOf([]).row);
    expect(rowOf([rectangle(450, 400, 290, 15)]).row).toEqual(rowOf([]).row);
  });

  test('that is only so deep is passed under or over, where that leaves more than going around it', () => {
    const deck = rowOf([rectangle(450, 200, 150, 300, { from: 'deck', deep: 25 })]);
    const under = deck.row.find(({ place }) => place === 2)!;
    expect(boxOf(under).z[1]!).toBeLessThanOrEqual(HIGH - 25);
    near(boxOf(under).z[1]!, HIGH - 25, 'under');
    near(boxOf(under).z[0]!, Z[0], 'bottom');
    expect(said(deck.made, 'R1-02')).toMatchObject([{ kind: 'lowered', why: 'keep-out', by: ['plug'] }]);
    const bottom = rowOf([rectangle(450, 200, 150, 300, { from: 'bottom', deep: 25 })]);
    const over = bottom.row.find(({ place }) => place === 2)!;
    near(boxOf(over).z[0]!, LOW + 25, 'over');
    near(boxOf(over).z[1]!, Z[1], 'deck');
    // No deeper than the skin it takes nothing of the chamber.
    const shallow = rowOf([rectangle(450, 200, 150, 300, { from: 'deck', deep: 10 })]).row;
    isBox(
      shallow.find(({ place }) => place === 2)!,
      [320, 580],
      Z,
      TO_RAIL,
    );
  });

  test('behind a chamber ends its depth, where that leaves more than going around it', () => {
    // From y = 200 to the rail, over the whole chamber.
    const { row } = rowOf([rectangle(450, 400, 250, 100)]);
    const chamber = row.find(({ place }) => place === 2)!;
    expect(chamber.depth[1]).toBeLessThanOrEqual(200);
    near(chamber.depth[1], 200, 'depth');
    near(boxOf(chamber).s[0]!, 320, 'from');
    near(boxOf(chamber).s[1]!, 580, 'to');
  });
});

// By hand: deck 100 − 20 (y / 300)², bottom 5 + 10 (y / 300)².
test('over a place in plan deck and bottom lie where their crown has them, and nothing beside the board', () => {
  const section = (v: number) => {
    const across = v < 1 ? v / 2 : v < 2 ? v / 2 : 3 - v;
    return { across, up: v < 2 ? (10 / 95) * across ** 2 : 1 - (20 / 95) * across ** 2 };
  };
  const crowned = surfaceBy({ length: 1200, half: () => 300, bottom: () => 5, thickness: 95, section });
  for (const y of [0, 60, -60, 150, -290]) {
    const { deck, bottom, deckUp, bottomUp } = heightsAt({ surface: crowned } as never, 400, y)!;
    const square = (y / 300) ** 2;
    expect([deck, bottom].map((z) => Number(z.toFixed(4)))).toEqual(
      [100 - 20 * square, 5 + 10 * square].map((z) => Number(z.toFixed(4))),
    );
    expect(5 + 95 * deckUp).toBeCloseTo(deck, 6);
    expect(5 + 95 * bottomUp).toBeCloseTo(bottom, 6);
  }
  expect(heightsAt({ surface: crowned } as never, 400, 300)).toBeUndefined();
});
