import { describe, expect, test } from 'vitest';
import type { Carving, DrawnRow } from '../../src/chamber/chambers.js';
import type { Obstacle } from '../../src/chamber/obstacle.js';
import type { DrawnPlace, RowPlace, DrawnChamber } from '../../src/chamber/row.js';
import type { IsFree } from '../../src/chamber/enlarge.js';
import { obstacleOf, type Keep } from '../../src/dot/around.js';
import { carvedAround, offends } from '../../src/dot/carvedAround.js';
import { farOn, nearOn, rowTo } from './rows.js';

const row = rowTo(60, 0);
const CLEAR = 2;

function keepAt(
  s: number,
  z: number,
  more: { swallowed?: boolean; far?: boolean; to?: readonly [number, number] } = {},
): Keep {
  const at = more.far ? farOn(row) : nearOn(row);
  const spot = { name: `D${s}`, joint: at.face.joint, from: [s, z], to: more.to ?? [s, z], radius: 8 } as const;
  return {
    spot,
    at,
    obstacle: obstacleOf(spot, at, { clearance: CLEAR, may: ['trim'] }),
    swallowed: more.swallowed ?? false,
  };
}
/** A box from end to end, 100 mm high. */
const shape = (from: number, to: number, deep = 60): DrawnChamber => ({
  row: 'R1',
  place: 1,
  profile: [[from, 0], [to, 0], [to, 100], [from, 100]], // prettier-ignore
  depth: [0, deep],
  volume: ((to - from) * 100 * deep) / 1e6,
});

// By hand: a dot of 16 mm with 2 mm around it takes 10 mm to either side of its middle.
describe('a chamber offends glue', () => {
  const does = (s: number, z: number, more: Parameters<typeof keepAt>[2] = {}, deep = 60) =>
    offends([shape(100, 200, deep)], keepAt(s, z, more), CLEAR);

  test('where it comes nearer than the clearance, on any side', () => {
    expect([does(211, 50), does(209, 50), does(89, 50), does(91, 50)]).toEqual([false, true, false, true]);
    expect([does(150, 111), does(150, 109), does(150, -11), does(150, -9)]).toEqual([false, true, false, true]);
    // Past a corner the gap is straight: 7 and 8 mm are 10.6, 6 and 7 are 9.2.
    expect([does(207, 108), does(206, 107)]).toEqual([false, true]);
    expect(does(210, 50)).toBe(false);
  });

  test('where a smear comes near with its end, its middle, or right through', () => {
    expect(does(150, 120, { to: [190, 109] })).toBe(true);
    expect(does(150, 120, { to: [190, 111] })).toBe(false);
    expect(does(50, 50, { to: [250, 50] })).toBe(true);
  });

  test('where it lies inside, unless it is swallowed whole with its clearance and taken away', () => {
    expect(does(150, 50)).toBe(true);
    expect(does(150, 50, { swallowed: true })).toBe(false);
    expect([does(150, 91, { swallowed: true }), does(150, 90, { swallowed: true })]).toEqual([true, false]);
    // Beside it, being allowed to swallow excuses nothing.
    expect(does(205, 50, { swallowed: true })).toBe(true);
  });

  test('at the far side only where it comes near, and swallows only where it comes out', () => {
    const far = { far: true };
    expect([does(150, 50, far, 57.9), does(150, 50, far, 58.1)]).toEqual([false, true]);
    const may = { far: true, swallowed: true };
    expect([does(150, 50, may, 59.9), does(150, 50, may, 60)]).toEqual([true, false]);
    const flared = rowTo(60, 0.1);
    const at = farOn(flared);
    const spot = { name: 'D', joint: 'JR1', from: [150, 50], to: [150, 50], radius: 8 } as const;
    const keep = { spot, at, obstacle: obstacleOf(spot, at, { clearance: CLEAR, may: [] }), swallowed: true };
    // It comes out all over the dot where it is as deep as the joint at the dot's far edge.
    const deepest = 60 + 158 * Math.sin(0.1);
    expect([deepest - 0.01, deepest + 0.01].map((deep) => offends([shape(100, 200, deep)], keep, CLEAR))).toEqual([
      true,
      false,
    ]);
  });

  test('if any one of several does, and none of none', () => {
    expect(offends([shape(0, 50), shape(100, 200)], keepAt(150, 50), CLEAR)).toBe(true);
    expect(offends([shape(0, 50), shape(300, 400)], keepAt(150, 50), CLEAR)).toBe(false);
    expect(offends([], keepAt(150, 50), CLEAR)).toBe(false);
  });
});

/** A row of one place from 100 to 200 whose drawing leaves out what obstacles block, and keeps the longer side. */
function rowOf(grow = 0) {
  const asked: { obstacles: string[]; proved: [number, number][]; free: boolean[] } = {
    obstacles: [],
    proved: [],
    free: [],
  };
  const draw = (_: unknown, obstacles: readonly Obstacle[]): DrawnPlace => {
    let [from, to] = [100, 200];
    for (const obstacle of obstacles) {
      asked.obstacles.push(obstacle.name);
      const { blocked } = obstacle as { blocked: { from: number; to: number } } & Obstacle;
      if (blocked.from - from > to - blocked.to) to = Math.min(to, blocked.from);
      else from = Math.max(from, blocked.to);
    }
    return { slot: { place: 1 }, shapes: to > from ? [shape(from, to)] : [], notes: [] } as unknown as DrawnPlace;
  };
  const prove = ({ slot, shapes }: DrawnPlace, isFree: IsFree): RowPlace => {
    const grown = shapes.map(({ profile }) => shape(profile[0]![0], profile[1]![0] + grow));
    asked.proved.push(...grown.map(({ profile }): [number, number] => [profile[0]![0], profile[1]![0]]));
    asked.free.push(...grown.map((each) => isFree(each)));
    return { slot, chambers: grown, notes: [] } as unknown as RowPlace;
  };
  const slot = { place: 1 };
  const drawn = { carving: { row, slots: [slot], draw, prove }, drawings: [draw(slot, [])] } as unknown as DrawnRow;
  return { drawn, asked };
}
const carved = (keeps: readonly Keep[], grow = 0, keepOuts: readonly Obstacle[] = []) => {
  const { drawn, asked } = rowOf(grow);
  const { rows, losses } = carvedAround([drawn], { keepOuts } as unknown as Carving, keeps, CLEAR);
  const chambers = rows[0]!.places[0]!.chambers.map(({ profile }) => [profile[0]![0], profile[1]![0]]);
  return { chambers, losses, asked };
};

describe('a place is carved around glue', () => {
  test('as it was drawn where none is near, at no loss', () => {
    expect(carved([keepAt(250, 50)])).toMatchObject({
      chambers: [[100, 200]],
      losses: [],
      asked: { obstacles: [], free: [true] },
    });
  });

  test('drawn again around what it offends, and what that cost is told in litres', () => {
    const { chambers, losses, asked } = carved([keepAt(180, 50), keepAt(300, 50)], 0, [
      { name: 'vent', on: 'row', row: 'R9', blocked: { from: 0, to: 1 } } as Obstacle,
    ]);
    expect(chambers).toEqual([[100, 170]]);
    expect(losses).toEqual([{ row: 'R1', place: 'R1-01', by: ['D180'], before: 0.6, after: 0.42 }]);
    // Glue beside it is kept off too, where it may not be swallowed, and so is every keep-out.
    expect(asked.obstacles).toEqual(['vent', 'D180', 'D300']);
  });

  test('without a word of glue that it swallows', () => {
    const { chambers, losses } = carved([keepAt(150, 50, { swallowed: true })]);
    expect([chambers, losses]).toEqual([[[100, 200]], []]);
  });

  test('drawn again where a split for one uncovers another that was swallowed', () => {
    const { chambers, losses } = carved([keepAt(185, 50), keepAt(168, 50, { swallowed: true })]);
    expect(chambers).toEqual([[100, 158]]);
    expect(losses).toMatchObject([{ by: ['D185', 'D168'] }]);
  });

  test('drawn again where the proof has let it grow too near', () => {
    const { chambers, losses, asked } = carved([keepAt(215, 50)], 9);
    // It grows by 9 mm to 209, where only 205 are free; nothing it is drawn to again differs, so it is told.
    expect(asked.free).toContain(false);
    expect(chambers).toEqual([[100, 209]]);
    expect(losses).toMatchObject([{ by: ['D215'], before: 0.6, after: 0.6 }]);
  });

  test('and not around that of another row', () => {
    const other = keepAt(150, 50);
    const elsewhere = { ...other, at: { ...other.at, row: { ...row, id: 'R2' } } };
    expect(carved([elsewhere])).toMatchObject({ chambers: [[100, 200]], losses: [] });
  });
});

// On a far joint that stands at an angle the piece is so thick at s: 60 + s sin a (plane geometry). A cutter takes glue
// away only where it comes out over all of it.
test('a smear on a slanting far joint is swallowed only by a chamber that comes out all along it', () => {
  for (const turn of [0.05, -0.05])
    for (const [first, last] of [
      [140, 170],
      [170, 140],
    ] as const) {
      const at = farOn(rowTo(60, turn));
      const spot = { name: 'S', joint: 'JR1', from: [first, 50], to: [last, 55], radius: 8 } as const;
      const keep: Keep = {
        spot,
        at,
        obstacle: obstacleOf(spot, at, { clearance: CLEAR, may: ['trim'] }),
        swallowed: true,
      };
      const thick = [140 - 8, 170 + 8].map((s) => 60 + s * Math.sin(turn));
      const does = (deep: number) => offends([shape(100, 220, deep)], keep, CLEAR);
      expect([does(Math.max(...thick) + 0.01), does(Math.max(...thick) - 0.01)], `${turn} ${first}`).toEqual([
        false,
        true,
      ]);
      // One that stays a clearance short of it all along does not meet it.
      const thinnest = Math.min(...[140 - 10, 170 + 10].map((s) => 60 + s * Math.sin(turn)));
      expect([does(thinnest - CLEAR - 0.01), does(thinnest - CLEAR + 0.01)]).toEqual([false, true]);
    }
});
