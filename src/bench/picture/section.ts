import type { Point } from '../../contour/point.js';
import type { Grid } from '../../board/grid.js';

/**
 * A cross-section of the finished surface: each half as a chain `[y, z]` from the keel over the apex to the deck's
 * centreline, mm.
 */
export interface Section {
  readonly left: readonly Point[];
  readonly right: readonly Point[];
}

/** The section `x` mm from the nose, straight between the grid's rows. Beyond the tips, the tips' own. */
export function sectionAt(grid: Grid, x: number): Section {
  const [row, share] = rowAt(grid.xs, x);
  const { columns, positions } = grid;
  const half = (side: 0 | 1) =>
    Array.from({ length: columns }, (_, column): [number, number] => {
      const a = 3 * ((row * 2 + side) * columns + column);
      const b = a + 6 * columns;
      const between = (k: number) => positions[a + k]! + share * (positions[b + k]! - positions[a + k]!);
      return [between(1), between(2)];
    });
  return { left: half(0), right: half(1) };
}

/** The outline in plan: half-widths at the rail's apex, both signed as `y`, at each of the grid's rows. */
export function outlineOf({ xs, rows, columns, apex, positions, notchRow }: Grid) {
  const at = (row: number, side: number, column: number) => positions[3 * ((row * 2 + side) * columns + column) + 1]!;
  return Array.from({ length: rows }, (_, row) => ({
    x: xs[row]!,
    left: at(row, 0, apex),
    right: at(row, 1, apex),
    /** The inner edges of a notch in the tail; 0 elsewhere. */
    inner: row >= notchRow ? ([at(row, 0, 0), at(row, 1, 0)] as const) : ([0, 0] as const),
  }));
}

function rowAt(xs: Float64Array, x: number): [row: number, share: number] {
  let low = 0;
  let high = xs.length - 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (xs[middle]! <= x) low = middle;
    else high = middle;
  }
  const share = (x - xs[low]!) / (xs[high]! - xs[low]!);
  return [low, Math.min(1, Math.max(0, share))];
}
