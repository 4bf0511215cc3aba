import type { Grid } from './grid.js';

/** For every point the number of the one that stands for it: points that coincide around a row are one. */
export function sharedPoints(grid: Pick<Grid, 'rows' | 'columns' | 'positions'>): Uint32Array {
  const { columns, positions } = grid;
  const same = Uint32Array.from({ length: grid.rows * 2 * columns }, (_, i) => i);
  const coincide = (i: number, j: number) =>
    positions[3 * i + 1] === positions[3 * j + 1] && positions[3 * i + 2] === positions[3 * j + 2];
  for (let row = 0; row < grid.rows; row++) {
    const left = row * 2 * columns;
    const right = left + columns;
    for (let i = right; i < right + columns; i++) if (i > right && coincide(i, i - 1)) same[i] = same[i - 1]!;
    for (let column = 0; column < columns; column++) {
      const i = left + column;
      if (coincide(i, right + column)) same[i] = same[right + column]!;
      else if (column > 0 && coincide(i, i - 1)) same[i] = same[i - 1]!;
    }
    // At a pointed tip of no thickness, and at the tips of a swallow, deck and bottom run together too.
    for (const first of [left, right])
      if (coincide(first, first + columns - 1)) same[first + columns - 1] = same[first]!;
  }
  return same;
}
