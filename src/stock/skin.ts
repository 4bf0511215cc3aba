import type { Board } from '../board/board.js';
import type { Layup } from '../layup/layup.js';
import type { SawnStrip } from './sawn.js';

/** The sides of a board that its stock is measured over. */
export const SIDES = ['deck', 'bottom', 'left rail', 'right rail', 'nose', 'tail'] as const;
export type StockSide = (typeof SIDES)[number];

/**
 * The points of the finished surface that lie on strips sawn from the blank: every second row and column of the board's
 * grid, between which it bends by 0.2 mm at most (four times `CHORD_ERROR`); more where these lie far apart, for the
 * blank may sag between them; and both sides of every joint, where a strip's stock begins and ends.
 *
 * Layout: `side` is the point's place in `SIDES`, `strip` its place in the sawn strips; `at` x, y, z, board frame, mm.
 */
export interface Skin {
  readonly side: Uint8Array;
  readonly strip: Uint8Array;
  readonly at: Float64Array;
}

/** A side of the board begins where its surface has turned 45° toward it. */
const TURNED = Math.SQRT1_2;
/** Points lie no further apart than this along the board and around it, mm. */
const ALONG = 40;
const AROUND = 20;
/** What lies no further from a joint is on it, mm. */
const ON_JOINT = 1e-6;

/** @param halves which halves of the board: both, or the right one of a board that is the same on both sides */
export function skinOf(
  { grid, vertexNormals: { normals }, length }: Board,
  { joints }: Pick<Layup, 'joints'>,
  strips: readonly SawnStrip[],
  halves: readonly (0 | 1)[],
): Skin {
  const { positions, columns, apex, xs } = grid;
  const at: number[] = [];
  const side: number[] = [];
  const strip: number[] = [];
  const rows = placesIn(xs.length, undefined, (a, b) => xs[b]! - xs[a]!, ALONG);
  for (const half of halves) {
    const ofHalf = [...strips.keys()].filter((i) => strips[i]!.member.side !== (half === 0 ? 'R' : 'L'));
    for (const row of rows) {
      const section = sectionAt(positions, normals, columns, half, row);
      const apart = (a: number, b: number) =>
        Math.hypot(section[SIX * b + 1]! - section[SIX * a + 1]!, section[SIX * b + 2]! - section[SIX * a + 2]!);
      for (const [x, y, z, nx, ny, nz] of withJoints(section, placesIn(columns, apex, apart, AROUND), joints)) {
        const upright = nz / Math.hypot(nx, ny, nz);
        const ahead = nx / Math.hypot(nx, ny, nz);
        for (const i of ofHalf) {
          const { left, right } = strips[i]!.member;
          if (left && y < left.at + left.slope * x - ON_JOINT) continue;
          if (right && y > right.at + right.slope * x + ON_JOINT) continue;
          at.push(x, y, z);
          strip.push(i);
          side.push(sideAt(ahead, upright, x < length / 2, half));
        }
      }
    }
  }
  return { side: Uint8Array.from(side), strip: Uint8Array.from(strip), at: Float64Array.from(at) };
}

/** Place and normal of a point: x, y, z, nx, ny, nz. */
type Knot = readonly [number, number, number, number, number, number];
const SIX = 6;

/** One half of the board's grid at a row, or between two: six numbers a column, as in `Knot`. */
function sectionAt(
  positions: Float64Array,
  normals: Float64Array,
  columns: number,
  half: 0 | 1,
  row: number,
): Float64Array {
  const section = new Float64Array(SIX * columns);
  const before = Math.floor(row);
  const share = row - before;
  for (let column = 0; column < columns; column++) {
    const i = 3 * ((before * 2 + half) * columns + column);
    const j = share > 0 ? i + 6 * columns : i;
    for (let axis = 0; axis < 3; axis++) {
      section[SIX * column + axis] = (1 - share) * positions[i + axis]! + share * positions[j + axis]!;
      section[SIX * column + 3 + axis] = (1 - share) * normals[i + axis]! + share * normals[j + axis]!;
    }
  }
  return section;
}

function between(section: Float64Array, place: number): Knot {
  const column = Math.floor(place);
  const share = place - column;
  const from = SIX * column;
  const to = share > 0 ? from + SIX : from;
  const mixed = (k: number) => (1 - share) * section[from + k]! + share * section[to + k]!;
  return [mixed(0), mixed(1), mixed(2), mixed(3), mixed(4), mixed(5)];
}

/** The section at these places, and wherever it meets a joint. */
function withJoints(section: Float64Array, places: readonly number[], joints: Layup['joints']): Knot[] {
  const knots = places.map((place) => between(section, place));
  for (const { at, slope } of joints) {
    const beyond = (column: number) => section[SIX * column + 1]! - at - slope * section[SIX * column]!;
    for (let column = 0; column + 1 < section.length / SIX; column++) {
      const [a, b] = [beyond(column), beyond(column + 1)];
      if (a * b < 0) knots.push(between(section, column + a / (a - b)));
    }
  }
  return knots;
}

/**
 * Every second of so many lines of a grid, its last, one that is kept, and places between where they lie further apart
 * than `most`, mm.
 */
function placesIn(
  count: number,
  kept: number | undefined,
  apart: (a: number, b: number) => number,
  most: number,
): number[] {
  const places: number[] = [];
  let last: number | undefined;
  for (let line = 0; line < count; line++) {
    if (line % 2 === 1 && line !== kept && line < count - 1) continue;
    if (last !== undefined) {
      const parts = Math.max(1, Math.ceil(apart(last, line) / most));
      for (let i = 1; i < parts; i++) places.push(last + ((line - last) * i) / parts);
    }
    places.push(line);
    last = line;
  }
  return places;
}

function sideAt(nx: number, nz: number, isFore: boolean, half: 0 | 1): number {
  const name: StockSide =
    nz > TURNED
      ? 'deck'
      : nz < -TURNED
        ? 'bottom'
        : isFore && nx < -TURNED
          ? 'nose'
          : !isFore && nx > TURNED
            ? 'tail'
            : half === 0
              ? 'left rail'
              : 'right rail';
  return SIDES.indexOf(name);
}
