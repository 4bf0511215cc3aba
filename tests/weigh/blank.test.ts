import { expect, test } from 'vitest';
import type { Board } from '../../src/board/board.js';
import { layupOf } from '../../src/layup/layupOf.js';
import { blankOf, boxBlank } from '../../src/weigh/blank.js';
import type { Slices } from '../../src/weigh/slices.js';

const foam = { name: 'foam', density: 20, source: 'invented' };
const strip = { kind: 'strip', material: foam, routing: 'open', joint: 'dotted' } as const;
/** Two strips of 60 mm a side and one that runs to the rail; 2 m long, 400 mm wide. */
const [LENGTH, HALF] = [2000, 200];
const layup = layupOf(
  { centreJoint: 'dotted', right: [{ ...strip, thickness: 60 }, { ...strip, thickness: 60 }, strip] },
  LENGTH,
);
const xs = Float64Array.from([0, 500, 1200, 2000]);
const outline = { outer: () => HALF, inner: () => 0 };
const board = { grid: { xs }, surface: { outlines: [outline, outline] } } as unknown as Board;
/** Every strip 40 mm high, the outer ones higher, where the outline has not left them. */
const heights = [44, 42, 40, 40, 42, 44];
function slicesWith(gone: (row: number, member: number) => boolean): Slices {
  const members = heights.length;
  const top = new Float64Array(xs.length * members).fill(NaN);
  const bottom = new Float64Array(xs.length * members).fill(NaN);
  xs.forEach((_, row) =>
    heights.forEach((height, m) => {
      if (gone(row, m)) return;
      top[row * members + m] = 7 + height;
      bottom[row * members + m] = 7;
    }),
  );
  return { members, top, bottom, xs } as unknown as Slices;
}
const rounded = (all: readonly { amount: number }[]) => all.map(({ amount }) => Number(amount.toFixed(6)));

// By hand: litres are mm³ over a million; every strip is its width times its height times its length.
test('a blank of strips holds what its strips do, and so much more for every millimetre left on all around', () => {
  const { members, perMm, widest } = blankOf(
    board,
    layup,
    slicesWith(() => false),
  );
  expect(widest).toEqual({ left: HALF, right: HALF });
  const wide = [80, 60, 60, 60, 60, 80];
  expect(rounded(members)).toEqual(wide.map((each, m) => (each * heights[m]! * LENGTH) / 1e6));
  // Deck and bottom of each, and the rail of the two outermost.
  const faces = wide.map((each, m) => 2 * each + (m === 0 || m === 5 ? heights[m]! : 0));
  expect(rounded(perMm)).toEqual(faces.map((each) => (each * LENGTH) / 1e6));
  // Where it lies along the board: in the middle.
  for (const { amount, x } of members) expect(x / amount).toBeCloseTo(LENGTH / 2, 6);
});

test('where the outline has left a strip, it is as high as at the nearest place inside', () => {
  const { members } = blankOf(
    board,
    layup,
    slicesWith((row, m) => (row === 0 || row === 3) && m === 5),
  );
  expect(rounded(members)[5]).toBe((80 * 44 * LENGTH) / 1e6);
  const none = blankOf(
    board,
    layup,
    slicesWith((_, m) => m === 5),
  );
  expect(rounded(none.members)[5]).toBe(0);
});

test('a box around the board is as long as it stands out at both ends, and each strip of it as thick', () => {
  const blank = blankOf(
    board,
    layup,
    slicesWith(() => false),
  );
  const box = boxBlank(layup, LENGTH, blank, 90, { nose: 30, tail: 50, below: 5 });
  expect(rounded(box)).toEqual([80, 60, 60, 60, 60, 80].map((each) => (each * 90 * (LENGTH + 80)) / 1e6));
  // Its middle lies 10 mm toward the tail of the board's.
  for (const { amount, x } of box) expect(x / amount).toBeCloseTo(LENGTH / 2 + 10, 6);
  // About the centreline: the distance of a strip's middle squared, and a twelfth of its width squared.
  const yy = box.map((each) => each.yy / each.amount);
  const exact = [160, 90, 30, 30, 90, 160].map((y, m) => y ** 2 + [80, 60, 60, 60, 60, 80][m]! ** 2 / 12);
  yy.forEach((each, m) => expect(each).toBeCloseTo(exact[m]!, 4));
});
