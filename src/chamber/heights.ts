import type { Grid } from '../board/grid.js';

/** Heights of the finished deck and bottom over a place in plan, mm. */
export interface Heights {
  readonly deck: number;
  readonly bottom: number;
}

/** The heights over `x`, `y`, board frame, straight between the points of the grid; undefined off the board. */
export function heightsAt(grid: Grid, x: number, y: number): Heights | undefined {
  const { xs, rows } = grid;
  if (!(x >= xs[0]! && x <= xs[rows - 1]!)) return undefined;
  let low = 0;
  let high = rows - 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (xs[middle]! <= x) low = middle;
    else high = middle;
  }
  const a = inSection(grid, low, y);
  const b = inSection(grid, high, y);
  if (!a || !b) return undefined;
  const share = (x - xs[low]!) / (xs[high]! - xs[low]! || 1);
  return { deck: a.deck + share * (b.deck - a.deck), bottom: a.bottom + share * (b.bottom - a.bottom) };
}

/** In one row of the grid: the lowest crossing of the deck side, the highest of the bottom side. */
function inSection({ columns, apex, positions }: Grid, row: number, y: number): Heights | undefined {
  const first = (row * 2 + (y < 0 ? 0 : 1)) * columns;
  let deck = Infinity;
  let bottom = -Infinity;
  for (let column = 1; column < columns; column++) {
    const at = 3 * (first + column);
    const y0 = positions[at - 2]!;
    const y1 = positions[at + 1]!;
    if (y < Math.min(y0, y1) || y > Math.max(y0, y1)) continue;
    const share = y1 === y0 ? 0 : (y - y0) / (y1 - y0);
    const z = positions[at - 1]! + share * (positions[at + 2]! - positions[at - 1]!);
    if (column > apex) deck = Math.min(deck, z);
    else bottom = Math.max(bottom, z);
  }
  return deck < Infinity && bottom > -Infinity ? { deck, bottom } : undefined;
}
