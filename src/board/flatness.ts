import type { Grid } from './grid.js';
import { cutNotch } from './notch.js';
import { fromTurn, sidesOf, toTurn } from './spacing.js';
import { pointsAcross, type Surface } from './surface.js';

/** What of a grid must be split: numbers of the rows and columns after which a new one is to lie in the middle. */
export interface Bent {
  readonly rows: ReadonlySet<number>;
  readonly columns: ReadonlySet<number>;
}

/**
 * Measures the surface against every cell of its grid, in the middle of the cell and of its sides and at the quarters
 * of those across the board, and says what to split where it is off by more than `limit`, mm. Where a notch cuts cells,
 * its edges are measured in their place.
 */
export function bentOf(grid: Omit<Grid, 'same' | 'chordError'>, surface: Surface, limit: number): Bent {
  const { xs, vs, positions, apex } = grid;
  const columns = vs.length;
  const between = (share: number) =>
    Float64Array.from({ length: columns - 1 }, (_, c) => vs[c]! + share * (vs[c + 1]! - vs[c]!));
  const onLines = surface.lengthwise(vs);
  const onMiddles = surface.lengthwise(between(0.5));
  // A section may turn all at once between two columns: then it is furthest off beside the middle.
  const quarters = [0.25, 0.75].map((share) => ({
    share,
    strands: surface.lengthwise(between(share)),
    points: new Float64Array(3 * columns),
  }));
  const bent = { rows: new Set<number>(), columns: new Set<number>() };
  // Points: in the middle between rows on columns and between them, and on this row and the next between columns.
  const middle = new Float64Array(3 * columns);
  const centre = new Float64Array(3 * columns);
  const square = new Float64Array(3);
  let here = new Float64Array(3 * columns);
  let next = new Float64Array(3 * columns);
  for (const side of sidesOf(surface)) {
    const { inner } = surface.outlines[side];
    pointsAcross(surface, side, xs[0]!, onMiddles.at(xs[0]!, side), next, 0);
    for (let row = 0; row + 1 < xs.length; row++) {
      [here, next] = [next, here];
      const to = xs[row + 1]!;
      const x = fromTurn((toTurn(xs[row]!, surface.length) + toTurn(to, surface.length)) / 2, surface.length);
      pointsAcross(surface, side, to, onMiddles.at(to, side), next, 0);
      for (const { strands, points } of quarters)
        pointsAcross(surface, side, xs[row]!, strands.at(xs[row]!, side), points, 0);
      pointsAcross(surface, side, x, onLines.at(x, side), middle, 0);
      pointsAcross(surface, side, x, onMiddles.at(x, side), centre, 0);
      const notch = inner(to);
      for (let column = 0; column + 1 < columns; column++) {
        const a = 3 * ((row * 2 + side) * columns + column);
        const d = a + 6 * columns;
        const k = 3 * column;
        if (notch > 0 && Math.min(Math.abs(positions[a + 1]!), Math.abs(positions[a + 4]!)) <= notch) continue;
        if (!squareTo(square, positions, a, d)) continue;
        const rowSag = Math.max(
          off(square, positions, a, d, middle, k),
          off(square, positions, a + 3, d + 3, middle, k + 3),
        );
        let columnSag = Math.max(off(square, positions, a, a + 3, here, k), off(square, positions, d, d + 3, next, k));
        for (const { share, points } of quarters)
          columnSag = Math.max(columnSag, off(square, positions, a, a + 3, points, k, share));
        // Whichever way the cell is cut in two: the middle lies off one diagonal or the other.
        const twisted = Math.max(
          off(square, positions, a, d + 3, centre, k),
          off(square, positions, a + 3, d, centre, k),
        );
        if (Math.max(rowSag + columnSag, twisted) <= limit) continue;
        if (columnSag > rowSag) bent.columns.add(column);
        else bent.rows.add(row);
      }
      if (notch === 0) continue;
      cutNotch(middle, 0, columns, apex, inner(x));
      for (const column of [0, columns - 1]) {
        const a = 3 * ((row * 2 + side) * columns + column);
        // The edge may turn where it passes from bottom to rail: the middle shows half of that, or more.
        if (fromChord(positions, a, a + 6 * columns, middle, 3 * column) > limit / 2) bent.rows.add(row);
      }
    }
  }
  return bent;
}

/**
 * Sets `square` to the direction square to a cell, from its diagonals, its corners from `a` on one row and from `d` on
 * the next; false where it has no area.
 */
function squareTo(square: Float64Array, p: Float64Array, a: number, d: number): boolean {
  const ux = p[d + 3]! - p[a]!;
  const uy = p[d + 4]! - p[a + 1]!;
  const uz = p[d + 5]! - p[a + 2]!;
  const wx = p[d]! - p[a + 3]!;
  const wy = p[d + 1]! - p[a + 4]!;
  const wz = p[d + 2]! - p[a + 5]!;
  const x = uy * wz - uz * wy;
  const y = uz * wx - ux * wz;
  const z = ux * wy - uy * wx;
  const size = Math.sqrt(x * x + y * y + z * z);
  if (size < NO_AREA) return false;
  square[0] = x / size;
  square[1] = y / size;
  square[2] = z / size;
  return true;
}

/** A cell of less than this, mm², has no direction. */
const NO_AREA = 1e-9;

/**
 * How far, along `square`, point `k` of `q` lies from the place so far along the side from point `i` to point `j` of
 * `p`.
 */
function off(
  square: Float64Array,
  p: Float64Array,
  i: number,
  j: number,
  q: Float64Array,
  k: number,
  share = 0.5,
): number {
  return Math.abs(
    square[0]! * (q[k]! - p[i]! - share * (p[j]! - p[i]!)) +
      square[1]! * (q[k + 1]! - p[i + 1]! - share * (p[j + 1]! - p[i + 1]!)) +
      square[2]! * (q[k + 2]! - p[i + 2]! - share * (p[j + 2]! - p[i + 2]!)),
  );
}

/** How far point `k` of `q` lies from the straight line between the points `i` and `j` of `p`. */
function fromChord(p: Float64Array, i: number, j: number, q: Float64Array, k: number): number {
  let [along, length, square] = [0, 0, 0];
  for (let axis = 0; axis < 3; axis++) {
    const side = p[j + axis]! - p[i + axis]!;
    const way = q[k + axis]! - p[i + axis]!;
    along += side * way;
    length += side * side;
    square += way * way;
  }
  return Math.sqrt(Math.max(0, square - (length > 0 ? (along * along) / length : 0)));
}
