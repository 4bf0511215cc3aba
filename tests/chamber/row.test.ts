import { describe, expect, test } from 'vitest';
import type { Chamber } from '../../src/chamber/chamber.js';
import { SHELL_ALLOWANCE } from '../../src/chamber/row.js';
import { carvingIn, type Carving } from '../../src/chamber/chambers.js';
import type { RowObstacle } from '../../src/chamber/obstacle.js';
import type { ChamberSpec, GlueUpSpec } from '../../src/job/job.js';
import { toBoard } from '../../src/layup/frame.js';
import { layupOf } from '../../src/layup/layupOf.js';
import { board, halves, HALF, HIGH, LENGTH, LOW, open, spec, trees } from './slabs.js';

/** The first row on the right of the slab, ready to be carved. */
function rowOf(glueUp: GlueUpSpec = halves, changed: Partial<ChamberSpec> = {}, cutterLength = 5000) {
  const routing = { cutterLength, guideStock: 12, bush: 20, passDepth: 12 };
  const job = { chambers: { ...spec, ...changed }, keepOuts: [], jointKeepOuts: [], routing };
  const { rows }: Carving = carvingIn(board, layupOf(glueUp, LENGTH), trees, job as never);
  return rows.find(({ row }) => row.id === 'R1')!;
}
const boxOf = ({ profile, depth }: Pick<Chamber, 'profile' | 'depth'>) => {
  const [s, z] = ([0, 1] as const).map((axis) => profile.map((pair) => pair[axis]));
  return [Math.min(...s!), Math.max(...s!), Math.min(...z!), Math.max(...z!), depth[1]];
};
/** The deepest of even steps of 5 mm that leaves the rail wall of 30 with its tolerance: 268.9 mm would do. */
const DEEP = 265;
const glueAt = (from: number, to: number, beyond = -1): RowObstacle => ({
  on: 'row',
  row: 'R1',
  why: 'dot',
  name: 'DR1.1',
  blocked: { from, to, low: -Infinity, high: Infinity },
  beyond,
});

describe('a place of a row in a slab, by hand', () => {
  const carving = rowOf();
  const [, second] = carving.slots;

  test('is drawn as the box within the walls and the allowance that proving takes back', () => {
    const { shapes, notes } = carving.draw(second!, []);
    expect(notes).toEqual([]);
    const [from, to, low, high, deep] = boxOf(shapes[0]!);
    // A web of 40 about the mark at 450, a pitch of 300; skins of 12 and 10 and a rail of 30, with the tolerance.
    expect([from, to]).toEqual([320, 580]);
    expect(low).toBeCloseTo(LOW + 11 + SHELL_ALLOWANCE, 6);
    expect(high).toBeCloseTo(HIGH - 13 - SHELL_ALLOWANCE, 6);
    expect(deep).toBe(DEEP);
    // The cutter's radius of 5 rounds four corners.
    const area = (to! - from!) * (high! - low!) - (4 - Math.PI) * 25;
    expect(shapes[0]!.volume).toBeCloseTo((area * deep!) / 1e6, 4);
  });

  test('grows to its walls where it is free to, and stays as drawn where it would be in the way of something', () => {
    const drawn = carving.draw(second!, []);
    const [free] = carving.prove(drawn).chambers;
    const [held] = carving.prove(drawn, () => false).chambers;
    const asDrawn = boxOf(drawn.shapes[0]!);
    boxOf(held!).forEach((each, i) => expect(each).toBeCloseTo(asDrawn[i]!, 6));
    expect(held!.wall.deck).toBeCloseTo(13 + SHELL_ALLOWANCE, 1);
    // To within 0.3 mm, how near walls are met; never under what is asked.
    for (const [patch, asked] of [
      ['deck', 13],
      ['bottom', 11],
      ['rail', 31],
    ] as const) {
      // prettier-ignore
      expect(free!.wall[patch]).toBeGreaterThanOrEqual(asked);
      expect(free!.wall[patch]).toBeLessThan(asked + 0.3);
      expect(free!.wall[patch]).toBeLessThanOrEqual(held!.wall[patch]);
    }
  });

  test('is drawn around glue in its own stretch, as deep as the glue lies, and around none in another', () => {
    const boxes = (obstacle: RowObstacle) => carving.draw(second!, [obstacle]).shapes.map(boxOf);
    const alone = carving.draw(second!, []).shapes.map(boxOf);
    // Parted by the web of 40, which holds the glue.
    const parts = boxes(glueAt(440, 460)).map(([from, to]) => [from, to]);
    expect(parts).toEqual([[320, 430], [470, 580]]); // prettier-ignore
    expect(boxes(glueAt(590, 620))).toEqual(alone);
    expect(boxes({ ...glueAt(440, 460), row: 'L1' })).toEqual(alone);
    // Glue on the far side of where the chamber ends is not met.
    expect(boxes(glueAt(440, 460, HALF))).toEqual(alone);
  });

  test('says what leaves it solid: the tip, the walls, or what is in the way', () => {
    const said = (obstacles: RowObstacle[], changed: Partial<ChamberSpec>) => {
      const row = rowOf(halves, changed);
      const drawn = row.draw(row.slots[0]!, obstacles);
      expect(drawn.shapes).toEqual([]);
      expect(row.prove(drawn).chambers).toEqual([]);
      return row.prove(drawn).notes;
    };
    const solid = { kind: 'solid', where: 'R1-01', row: 'R1', place: 1 } as const;
    // The first place ends at 280: behind a solid nose of 250 there are 30 mm, and the smallest chamber has 40.
    expect(said([], { solidNose: 250 })).toEqual([{ ...solid, why: 'ends', by: [] }]);
    expect(said([], { deckSkin: 70 })).toEqual([{ ...solid, why: 'room', by: [] }]);
    expect(said([glueAt(70, 270)], {})).toEqual([{ ...solid, why: 'dot', by: ['DR1.1'] }]);
  });

  test('goes as deep as the cutter comes, and says how deep it would go', () => {
    const short = rowOf(halves, {}, 112);
    const drawn = short.draw(short.slots[1]!, []);
    expect(boxOf(drawn.shapes[0]!)[4]).toBeCloseTo(100, 6);
    expect(short.prove(drawn).chambers[0]!.depth[1]).toBeCloseTo(100, 6);
    expect(drawn.wouldGo!).toBe(DEEP);
    expect(carving.draw(second!, []).wouldGo).toBeUndefined();
  });
});

test('on a joint that leans, no corner of a chamber at any depth comes into the solid nose or tail', () => {
  // The outer face leans 40 mm in 1200, one way or the other: 9 mm at the depth of the rail.
  for (const [nose, tail] of [
    [40, 80],
    [80, 40],
  ]) {
    // prettier-ignore
    // prettier-ignore
    const flared: GlueUpSpec = {
      centreJoint: 'dotted',
      right: [open({ thickness: { nose: nose!, tail: tail! } }), open()],
    };
    const { rows } = carvingIn(board, layupOf(flared, LENGTH), trees, {
      chambers: { ...spec, stagger: 0 },
      keepOuts: [],
      jointKeepOuts: [],
      routing: { cutterLength: 5000, guideStock: 12, bush: 20, passDepth: 12 },
    } as never);
    const { row, slots, draw, prove } = rows.find(({ row }) => row.id === 'R2')!;
    const xs = slots.flatMap((slot) =>
      prove(draw(slot, [])).chambers.flatMap(({ profile, depth }) =>
        profile.flatMap(([s, z]) => depth.map((t) => toBoard(row.face, s, z, t)[0])),
      ),
    );
    expect(row.face.inward[0]).not.toBe(0);
    expect(Math.min(...xs)).toBeGreaterThanOrEqual(spec.solidNose - 1e-6);
    expect(Math.max(...xs)).toBeLessThanOrEqual(LENGTH - spec.solidTail + 1e-6);
    // As near as it may be, at one of its depths.
    expect(Math.min(...xs)).toBeLessThan(spec.solidNose + 0.5);
    expect(Math.max(...xs)).toBeGreaterThan(LENGTH - spec.solidTail - 0.5);
  }
});
