import { describe, expect, test } from 'vitest';
import type { Grid } from '../../src/board/grid.js';
import { boundAt, roomOf } from '../../src/chamber/room.js';
import { Past } from '../../src/kept/past.js';
import type { Face } from '../../src/layup/layup.js';
import { gridBy, surfaceBy } from '../board/formulas.js';

/**
 * A shell with flat sides, so that every cut through it is a difference of straight lines: bottom and deck meet at a
 * rail `wide` mm out; the deck falls outward by a tenth and rises toward the tail, the bottom rises outward by a
 * twentieth.
 */
const deck = (x: number, y: number) => 90 + 0.01 * x - 0.1 * Math.abs(y);
const bottom = (x: number, y: number) => 10 + 0.005 * x + 0.05 * Math.abs(y);
const ACROSS = [0, 0.3, 0.7, 1];

function shellOfWedge(by: number, wide: number, rows = 12) {
  const xs = Float64Array.from({ length: rows }, (_, i) => by * (100 * i + (i % 3) * 20));
  const columns = 2 * ACROSS.length;
  const positions: number[] = [];
  for (const x of xs)
    for (const side of [-1, 1]) {
      const point = (share: number, of: typeof deck): number[] => {
        const y = side * wide * share;
        return [x, y * by, by * of(x / by, y)];
      };
      // From the keel out to the apex, and back along the deck.
      positions.push(...ACROSS.flatMap((share) => point(share, bottom)));
      positions.push(...[...ACROSS].reverse().flatMap((share) => point(share, deck)));
    }
  const grid: Grid = {
    xs,
    vs: new Float64Array(columns),
    rows,
    columns,
    apex: ACROSS.length - 1,
    positions: Float64Array.from(positions),
    same: new Uint32Array(2 * rows * columns),
    notchRow: rows,
    chordError: 0,
  };
  return { grid, shell: Float64Array.from(positions) };
}
const faceAt = (y: number, turn: number, way: 1 | -1): Face => ({
  id: 'F',
  on: 'in',
  piece: 'P',
  joint: 'J',
  origin: [0, y],
  along: [Math.cos(turn), Math.sin(turn)],
  inward: [0 - way * Math.sin(turn), way * Math.cos(turn)],
});

describe.each([
  ['tiny', 0.1],
  ['typical', 1],
  ['huge', 10],
])('the room within a %s shell', (_, by) => {
  const wide = 150;
  const { grid, shell } = shellOfWedge(by, wide);
  const last = grid.xs[grid.rows - 1]!;

  // By hand, at each depth down to the one asked for: deck falls and bottom rises outward.
  test.each([
    ['on the centreline', 0, 0, 1],
    ['out from a joint', 30, 0, 1],
    ['in toward the centreline and beyond', 60, 0, -1],
    ['on the left', -40, 0, -1],
    ['from a flared joint', 20, 0.03, 1],
    ['from one that closes', 50, -0.02, 1],
  ] as const)(
    'is as high and as low as the planes let a chamber be that is open from its face: %s',
    (_where, y, turn, way) => {
      const face = faceAt(y * by, turn, way);
      const layer = 9 * by;
      const room = roomOf(grid, shell, face, 45 * by, layer);
      expect([room.layers, room.layer]).toEqual([6, layer]);
      let asked = 0;
      for (let s = last * 0.1; s < last * 0.88; s += last / 37) {
        for (let j = 0; j < room.layers; j++) {
          let [high, low] = [Infinity, -Infinity];
          for (let t = 0; t <= j; t++) {
            const at = [
              s * face.along[0] + t * layer * face.inward[0],
              face.origin[1] + s * face.along[1] + t * layer * face.inward[1],
            ] as const;
            if (Math.abs(at[1]) > wide * by) high = NaN;
            high = Math.min(high, by * deck(at[0] / by, at[1] / by));
            low = Math.max(low, by * bottom(at[0] / by, at[1] / by));
          }
          const [top, under] = [boundAt(room, room.top, j, s), boundAt(room, room.bottom, j, s)];
          if (Number.isNaN(high)) expect(top).toBeNaN();
          else if (!Number.isNaN(top)) {
            asked++;
            // Straight between even steps and between rows: at the keel, where a plane bends, less by that.
            expect(Math.abs(top - high)).toBeLessThan(1e-6 * by + bend(face, layer, j, s, by));
            expect(Math.abs(under - low)).toBeLessThan(1e-6 * by + bend(face, layer, j, s, by));
          }
        }
      }
      expect(asked).toBeGreaterThan(100);
    },
  );

  test('ends where the rail does', () => {
    const room = roomOf(grid, shell, faceAt(140 * by, 0, 1), 30 * by, 5 * by);
    const middle = last / 2;
    const open = Array.from({ length: room.layers }, (_, j) => !Number.isNaN(boundAt(room, room.top, j, middle)));
    // The rail lies 10 mm behind this face, to scale.
    expect(open).toEqual([true, true, true, false, false, false, false]);
  });

  test('before the rail alone nothing is deeper than it is asked for', () => {
    expect(roomOf(grid, shell, faceAt(0, 0, 1), 0, 5).layers).toBe(1);
    expect(roomOf(grid, shell, faceAt(0, 0, 1), 20 * by, 5 * by).layers).toBe(5);
    expect(roomOf(grid, shell, faceAt(0, 0, 1), 19.9 * by, 5 * by).layers).toBe(4);
  });
});

/** How far the bend along the keel may put a straight line off near it, mm. */
function bend(face: Face, layer: number, j: number, s: number, by: number): number {
  const y = [0, j].map((t) => face.origin[1] + s * face.along[1] + t * layer * face.inward[1]);
  const isNear = y.some((each) => Math.abs(each) < 8) || Math.sign(y[0]!) !== Math.sign(y[1]!);
  return isNear ? 0.1 * 9 * by : 0;
}

test('a room is kept for the same face and depths, and made anew for others', () => {
  const { grid, shell } = shellOfWedge(1, 150);
  const face = faceAt(30, 0, 1);
  const past = new Past();
  const room = past.of(roomOf, grid, shell, face, 40, 5);
  expect(past.of(roomOf, grid, shell, face, 40, 5)).toBe(room);
  for (const other of [faceAt(31, 0, 1), faceAt(30, 0, -1)])
    expect(past.of(roomOf, grid, shell, other, 40, 5)).not.toBe(room);
  expect(past.of(roomOf, grid, shell, face, 45, 5)).not.toBe(room);
});

test('between its steps a room is straight, and nothing is known beyond a step that has none', () => {
  const room = {
    step: 8,
    count: 4,
    layer: 5,
    layers: 2,
    top: Float64Array.from([1, 3, NaN, 7, 10, 30, 50, 90]),
    bottom: new Float64Array(8),
  };
  const at = (j: number, s: number) => boundAt(room, room.top, j, s);
  expect([at(0, 0), at(0, 2), at(0, 8), at(1, 4), at(1, 20), at(1, 24)]).toEqual([1, 1.5, 3, 20, 70, 90]);
  expect([at(0, 9), at(0, 20)]).toEqual([NaN, NaN]);
});

// Rows stand 20 mm apart, steps 8 mm: of a board that is 300 mm to each side before a place and 40 behind it, a face
// 100 mm out has room up to the last broad row, also where a step falls on that row, and again from the next.
test.each([
  [570, 560],
  [590, 580],
])('room ends with the last row that has some, where the board narrows all at once at %d mm', (narrow, last) => {
  const rows = Array.from({ length: 61 }, (_, i) => 20 * i);
  const columns = Array.from({ length: 31 }, (_, i) => i / 10);
  for (const isTail of [true, false]) {
    const isBroad = (x: number) => (isTail ? x < narrow : 1200 - x < narrow);
    const surface = surfaceBy({ length: 1200, half: (x) => (isBroad(x) ? 300 : 40), thickness: 90 });
    const grid = { ...gridBy(surface, rows, columns), same: new Uint32Array(0), chordError: 0 };
    const room = roomOf(grid, grid.positions, faceAt(100, 0, 1), 50, 10);
    for (let s = 0; s <= 1200; s += 8) {
      const isIn = isTail ? s <= last : s >= 1200 - last;
      for (const j of [0, 3, 5]) {
        expect(Number.isNaN(boundAt(room, room.top, j, s)), `${isTail} ${s} ${j}`).toBe(!isIn);
        if (isIn) expect([boundAt(room, room.bottom, j, s), boundAt(room, room.top, j, s)]).toEqual([0, 90]);
      }
    }
  }
});
