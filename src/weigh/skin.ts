import type { Grid } from '../board/grid.js';
import { AlongBoard, type Moments, pointMoments, sumOf } from './moments.js';
import type { Slices } from './slices.js';

/** The finished surface as a laminator sees it: parted along the rail apex, m² and m. */
export interface Skin {
  /** From the rail apex up and in; ends cut straight across are shared with the bottom. */
  readonly deck: Moments;
  readonly bottom: Moments;
  /** The rail apex from nose to tail, both sides, m. */
  readonly apexLine: Moments;
}

export function skinOf(grid: Grid, { area, members }: Slices): Skin {
  const { rows, columns, apex, positions: p } = grid;
  const sums = { deck: new Float64Array(4), bottom: new Float64Array(4) };
  const addTriangle = (to: Float64Array, a: number, b: number, c: number) => {
    const ux = p[b]! - p[a]!,
      uy = p[b + 1]! - p[a + 1]!,
      uz = p[b + 2]! - p[a + 2]!;
    const vx = p[c]! - p[a]!,
      vy = p[c + 1]! - p[a + 1]!,
      vz = p[c + 2]! - p[a + 2]!;
    const nx = uy * vz - uz * vy,
      ny = uz * vx - ux * vz,
      nz = ux * vy - uy * vx;
    const size = Math.sqrt(nx * nx + ny * ny + nz * nz) / 2;
    const x = (p[a]! + p[b]! + p[c]!) / 3;
    const y = (p[a + 1]! + p[b + 1]! + p[c + 1]!) / 3;
    to[0]! += size;
    to[1]! += size * x;
    to[2]! += size * x * x;
    to[3]! += size * y * y;
  };
  const addCell = (to: Float64Array, a: number, b: number, c: number, d: number) => {
    addTriangle(to, 3 * a, 3 * b, 3 * c);
    addTriangle(to, 3 * a, 3 * c, 3 * d);
  };
  for (let row = 0; row + 1 < rows; row++) {
    for (const side of [0, 1]) {
      const first = (row * 2 + side) * columns;
      const next = first + 2 * columns;
      for (let column = 0; column + 1 < columns; column++) {
        const to = column < apex ? sums.bottom : sums.deck;
        addCell(to, first + column, first + column + 1, next + column + 1, next + column);
      }
      // The sides of a swallow's notch go with the bottom.
      if (row >= grid.notchRow) addCell(sums.bottom, first + columns - 1, first, next, next + columns - 1);
    }
  }
  const ends = [0, rows - 1].map((row) => {
    let end = 0;
    for (let m = 0; m < members; m++) end += area[row * members + m]!;
    return pointMoments(end / 2e6, grid.xs[row]!);
  });
  const moments = (name: 'deck' | 'bottom'): Moments => {
    const [amount, x, xx, yy] = Array.from(sums[name], (sum) => sum / 1e6);
    return sumOf([{ amount: amount!, x: x!, xx: xx!, yy: yy! }, ...ends]);
  };
  return { deck: moments('deck'), bottom: moments('bottom'), apexLine: apexLineOf(grid) };
}

function apexLineOf({ rows, columns, apex, positions: p, xs }: Grid): Moments {
  const along = new AlongBoard();
  for (const side of [0, 1]) {
    for (let row = 1; row < rows; row++) {
      const b = 3 * ((row * 2 + side) * columns + apex);
      const a = b - 6 * columns;
      const step = xs[row]! - xs[row - 1]!;
      const slant = Math.hypot(p[b]! - p[a]!, p[b + 1]! - p[a + 1]!, p[b + 2]! - p[a + 2]!) / step;
      along.add(xs[row - 1]!, xs[row]!, slant, slant, p[a + 1]! ** 2, p[b + 1]! ** 2);
    }
  }
  return along.moments(1e3);
}
