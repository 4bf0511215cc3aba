import type { Grid } from '../board/grid.js';

/** A side of the board as a flat piece of cloth would lie on it: along its centreline and out to both rails, mm. */
export interface Girth {
  /** From the nose, straight, as stations are measured. */
  readonly x: number;
  /** From the nose along the surface on the centreline, where a tape lies. */
  readonly along: number;
  /** From the centreline over the surface to the widest line of the rail. */
  readonly left: number;
  readonly right: number;
}

/** Girths of deck or bottom at every row of the grid, nose to tail. */
export function girthsOf(grid: Grid, side: 'deck' | 'bottom'): Girth[] {
  const { rows, columns, apex, positions: p, xs } = grid;
  const [from, to] = side === 'deck' ? [apex, columns - 1] : [0, apex];
  const middle = side === 'deck' ? columns - 1 : 0;
  const distance = (a: number, b: number) => Math.hypot(p[b]! - p[a]!, p[b + 1]! - p[a + 1]!, p[b + 2]! - p[a + 2]!);
  const half = (row: number, on: 0 | 1): number => {
    const first = 3 * (row * 2 + on) * columns;
    let length = 0;
    for (let i = from; i < to; i++) length += distance(first + 3 * i, first + 3 * (i + 1));
    // Within a notch the half begins at its side.
    return length + Math.abs(p[first + 3 * middle + 1]!);
  };
  let along = 0;
  return Array.from({ length: rows }, (_, row): Girth => {
    if (row > 0) {
      const [a, b] = [3 * ((row - 1) * 2 * columns + middle), 3 * (row * 2 * columns + middle)];
      along += Math.hypot(p[b]! - p[a]!, p[b + 2]! - p[a + 2]!);
    }
    return {
      x: xs[row]!,
      along,
      left: half(row, 0),
      right: half(row, 1),
    };
  });
}

/** The girth at a place from the nose, between two rows straight. */
export function girthAt(girths: readonly Girth[], x: number): Girth {
  const next = Math.max(
    1,
    girths.findIndex((girth) => girth.x >= x),
  );
  const [a, b] = [girths[next - 1]!, girths[next]!];
  const share = (x - a.x) / (b.x - a.x);
  const between = (key: 'along' | 'left' | 'right') => a[key] + share * (b[key] - a[key]);
  return { x, along: between('along'), left: between('left'), right: between('right') };
}
