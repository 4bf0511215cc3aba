import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { acrossRow, boxOnRows, isOpenAt, openBeyond, rowsAt, type JointOnRow } from '../../src/chamber/onRow.js';
import type { Face, Layup, Row } from '../../src/layup/layup.js';
import { evenly } from '../evenly.js';

const SEED = 20261127;

/** A face through a point of x = 0, turned by an angle; on the left of its piece, so the piece lies toward +y. */
const face = (joint: string, y: number, turn: number, on: 1 | -1): Face => ({
  id: `F-${joint}`,
  on: 'in',
  piece: 'P',
  joint,
  origin: [0, y],
  along: [Math.cos(turn), Math.sin(turn)],
  inward: [-on * Math.sin(turn), on * Math.cos(turn)],
});
/** A row from a joint at y = 0, turned by `near`, to one at y = `wide`, turned by `far`. */
const rowOf = (near: number, far: number, wide: number): Row => ({
  id: 'R1',
  side: 'R',
  number: 1,
  piece: 'P',
  face: face('JA', 0, near, 1),
  through: face('JB', wide, far, -1),
  members: [],
  end: 'face',
  parity: 0,
});
const layupOf = (row: Row) => ({ rows: [row, { ...row, id: 'R9', face: face('JC', 9, 0, 1), through: undefined }] });
const at = (row: Row, joint: string): JointOnRow => rowsAt(layupOf(row) as unknown as Layup, joint)[0]!;

test('a row meets the joint it is routed from and the one it is routed through to, and no other', () => {
  const row = rowOf(0, 0, 50);
  const meets = (joint: string) =>
    rowsAt(layupOf(row) as unknown as Layup, joint).map(({ row: { id }, near }) => [id, near]);
  expect([meets('JA'), meets('JB'), meets('JC'), meets('JD')]).toEqual([
    [['R1', true]],
    [['R1', false]],
    [['R9', true]],
    [],
  ]);
});

const angle = evenly(-0.1, 0.1);
const flared = fc.record({
  near: angle,
  far: angle,
  wide: fc.integer({ min: 300, max: 600 }),
  s: fc.integer({ min: 0, max: 2000 }),
  long: fc.integer({ min: 0, max: 400 }),
});

describe(`on joints at any angle (seed ${SEED})`, () => {
  // By plane geometry: s and t are lengths along and square to the face, from the place itself.
  test('a place on the far joint lies square across from where it is on the row’s own face', () => {
    fc.assert(
      fc.property(flared, ({ near, far, wide, s }) => {
        const row = rowOf(near, far, wide);
        const { s: across, t } = acrossRow(at(row, 'JB'), s);
        const [x, y] = [s * Math.cos(far), wide + s * Math.sin(far)];
        const foot = [across * Math.cos(near), across * Math.sin(near)];
        expect(Math.hypot(x - foot[0]!, y - foot[1]!)).toBeCloseTo(Math.abs(t), 6);
        expect((x - foot[0]!) * Math.cos(near) + (y - foot[1]!) * Math.sin(near)).toBeCloseTo(0, 6);
        expect(t).toBeGreaterThan(0);
        expect(acrossRow(at(row, 'JA'), s)).toEqual({ s, t: 0 });
      }),
      { seed: SEED, numRuns: 200 },
    );
  });

  // Brute force: 50 places along the stretch.
  test('a chamber comes near a stretch of the far joint, or goes through all of it, as at its places one by one', () => {
    fc.assert(
      fc.property(flared, fc.integer({ min: 2, max: 20 }), ({ near, far, wide, s, long }, off) => {
        const row = rowOf(near, far, wide);
        const joint = at(row, 'JB');
        const deep = Array.from({ length: 51 }, (_, i) => acrossRow(joint, s + (long * i) / 50).t);
        expect(openBeyond(joint, s, s + long, off)).toBeCloseTo(Math.min(...deep) - off, 6);
        expect(openBeyond(joint, s + long, s, off)).toBeCloseTo(Math.min(...deep) - off, 6);
        // A film thinner than a millimetre is no wall.
        expect(openBeyond(joint, s, s + long)).toBeCloseTo(Math.min(...deep) - 1, 6);
        expect(openBeyond(joint, s, s + long, 0.2)).toBeCloseTo(Math.min(...deep) - 1, 6);
        expect(isOpenAt(joint, Math.max(...deep) + 1e-6, s, s + long)).toBe(true);
        expect(isOpenAt(joint, Math.max(...deep) - 1e-6, s, s + long)).toBe(false);
        expect(openBeyond(at(row, 'JA'), s, s + long, off)).toBe(-Infinity);
        expect(isOpenAt(at(row, 'JA'), 0, s, s + long)).toBe(true);
      }),
      { seed: SEED, numRuns: 200 },
    );
  });
});

test('a chamber that just comes out is open', () => {
  expect(isOpenAt(at(rowOf(0, 0, 50), 'JB'), 50, 0, 100)).toBe(true);
});

test('a rectangle on a joint blocks the rows on both its sides, each in its own frame', () => {
  const row = rowOf(0, 0.1, 400);
  const box = { from: 500, to: 600, low: 20, high: 40 };
  const layup = layupOf(row) as unknown as Layup;
  const [near] = boxOnRows(layup, 'JA', box, 'vent', 'keep-out');
  expect(near).toEqual({ on: 'row', row: 'R1', why: 'keep-out', name: 'vent', blocked: box, beyond: -Infinity });
  const [far] = boxOnRows(layup, 'JB', box, 'vent', 'dot');
  // By hand: 500 and 600 along a line that rises by 0.1 radian.
  expect(far!.blocked).toEqual({ from: 500 * Math.cos(0.1), to: 600 * Math.cos(0.1), low: 20, high: 40 });
  expect(far!.beyond).toBeCloseTo(400 + 500 * Math.sin(0.1) - 1, 6);
  const [turned] = boxOnRows(layup, 'JB', { ...box, from: 600, to: 500 }, 'vent', 'dot');
  expect(turned!.blocked).toEqual(far!.blocked);
});
