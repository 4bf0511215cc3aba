import type { Board } from '../board/board.js';
import type { Layup } from '../layup/layup.js';
import type { SawnStrip } from './sawn.js';

/** The sides of a board that its stock is measured over. */
export const SIDES = ['deck', 'bottom', 'left rail', 'right rail', 'nose', 'tail'] as const;
export type StockSide = (typeof SIDES)[number];

/**
 * The points of the finished surface that lie on strips sawn from the blank: every second row and column of the board's
 * grid and its edges, between which it bends by 0.2 mm at most (four times `CHORD_ERROR`).
 *
 * Layout: `vertex` is the point's number in the board's grid, `side` its place in `SIDES`, `strip` its place in the
 * sawn strips; `at` x, y, z, board frame, mm.
 */
export interface Skin {
  readonly vertex: Uint32Array;
  readonly side: Uint8Array;
  readonly strip: Uint8Array;
  readonly at: Float64Array;
}

/** A side of the board begins where its surface has turned 45° toward it. */
const TURNED = Math.SQRT1_2;

/** @param halves which halves of the board: both, or the right one of a board that is the same on both sides */
export function skinOf(
  { grid, vertexNormals: { normals }, length }: Board,
  layup: Layup,
  strips: readonly SawnStrip[],
  halves: readonly (0 | 1)[],
): Skin {
  const { positions, same, rows, columns, apex } = grid;
  const vertex: number[] = [];
  const side: number[] = [];
  const strip: number[] = [];
  const ofMember = layup.members.map((member) => strips.findIndex((each) => each.member === member));
  for (let row = 0; row < rows; row++) {
    if (row % 2 === 1 && row < rows - 1) continue;
    for (const half of halves) {
      for (let column = 0; column < columns; column++) {
        if (column % 2 === 1 && column !== apex && column < columns - 1) continue;
        const i = (row * 2 + half) * columns + column;
        if (same[i] !== i && same[i]! >= row * 2 * columns && halves.length === 2) continue;
        const [x, y] = [positions[3 * i]!, positions[3 * i + 1]!];
        const member = layup.joints.findIndex(({ at, slope }) => y < at + slope * x);
        const of = ofMember[member < 0 ? layup.members.length - 1 : member]!;
        if (of < 0) continue;
        vertex.push(i);
        strip.push(of);
        side.push(sideAt(normals, 3 * i, x < length / 2, half));
      }
    }
  }
  const at = new Float64Array(3 * vertex.length);
  vertex.forEach((i, k) => at.set(positions.subarray(3 * i, 3 * i + 3), 3 * k));
  return { vertex: Uint32Array.from(vertex), side: Uint8Array.from(side), strip: Uint8Array.from(strip), at };
}

function sideAt(normals: Float64Array, at: number, isFore: boolean, half: 0 | 1): number {
  const [nx, nz] = [normals[at]!, normals[at + 2]!];
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
