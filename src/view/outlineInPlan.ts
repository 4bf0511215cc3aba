import type { Grid } from '../board/grid.js';

/** The outline in plan: half-widths at the rail's apex, both signed as `y`, at each of the grid's rows. */
export function outlineInPlan({ xs, rows, columns, apex, positions, notchRow }: Grid) {
  const at = (row: number, side: number, column: number) => positions[3 * ((row * 2 + side) * columns + column) + 1]!;
  return Array.from({ length: rows }, (_, row) => ({
    x: xs[row]!,
    left: at(row, 0, apex),
    right: at(row, 1, apex),
    /** The inner edges of a notch in the tail; 0 elsewhere. */
    inner: row >= notchRow ? ([at(row, 0, 0), at(row, 1, 0)] as const) : ([0, 0] as const),
  }));
}
