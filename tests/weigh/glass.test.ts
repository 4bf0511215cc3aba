import { expect, test } from 'vitest';
import type { Grid } from '../../src/board/grid.js';
import { glassParts } from '../../src/weigh/glass.js';
import { laminateOf } from '../../src/weigh/modulus.js';

/** Half width and height of a plank, and how far up its side the apex lies, mm. */
const [HALF, HIGH, APEX] = [200, 50, 30];

/** Its half-section from the keel around: out along the bottom, up the side past the apex, in along the deck. */
const half = (x: number, side: number) => [
  [x, 0, 0],
  [x, side * HALF, 0],
  [x, side * HALF, APEX],
  [x, side * HALF, HIGH],
  [x, 0, HIGH],
];
const grid: Grid = {
  xs: Float64Array.from([0, 700]),
  vs: new Float64Array(5),
  rows: 2,
  columns: 5,
  apex: 2,
  positions: Float64Array.from([half(0, -1), half(0, 1), half(700, -1), half(700, 1)].flat(2)),
  same: new Uint32Array(20),
  notchRow: 2,
  chordError: 0,
};
const glass = { deck: [200, 120], bottom: [170], lap: 0, resin: 0.9, sealer: 0, hotCoat: 0, hotCoatCloth: 25 };
const [deck, bottom, coat] = [320, 170, 25].map((cloth) => laminateOf(cloth, 0.9).thickness) as [
  number,
  number,
  number,
];

/** Strips of glass by hand, on both sides of the board: thickness, from one height to another, and how long. */
function sums(strips: readonly (readonly [thick: number, from: number, to: number, long: number])[]) {
  let [area, first, second] = [0, 0, 0];
  for (const [thick, from, to, long] of strips) {
    area += 2 * thick * long;
    first += (2 * thick * long * (from + to)) / 2;
    // ∫ z² along a straight line from one height to another.
    second += (2 * thick * long * (from ** 2 + from * to + to ** 2)) / 3;
  }
  return { area, first, second };
}

test.each([
  ['without a lap', 0],
  ['with a lap around the side', 15],
  ['with a lap broader than the side', 120],
])('the glass around a plank is a tube of two cloths %s: area and moments by hand', (_, lap) => {
  const strips: [number, number, number, number][] = [
    [bottom + coat, 0, 0, HALF],
    [bottom + coat, 0, APEX, APEX],
    [deck + coat, APEX, HIGH, HIGH - APEX],
    [deck + coat, HIGH, HIGH, HALF],
  ];
  // Each cloth laps so far past the apex, first along the side. It is counted over a whole stretch of the section.
  const down = Math.min(lap, APEX);
  const up = Math.min(lap, HIGH - APEX);
  strips.push([(deck * down) / APEX, 0, APEX, APEX], [(bottom * up) / (HIGH - APEX), APEX, HIGH, HIGH - APEX]);
  strips.push([(deck * (lap - down)) / HALF, 0, 0, HALF], [(bottom * (lap - up)) / HALF, HIGH, HIGH, HALF]);
  const exact = sums(strips);
  for (const part of glassParts(grid, { ...glass, lap })) {
    expect(part.area).toBeCloseTo(exact.area, 6);
    expect(part.firstMoment).toBeCloseTo(exact.first, 5);
    expect(part.secondMoment).toBeCloseTo(exact.second, 3);
    expect(part.modulus).toBeCloseTo(laminateOf(1, 0.9).modulus, 6);
  }
});
