import type { Board } from '../board/board.js';
import type { Stretch } from '../chamber/stretch.js';
import type { Point } from '../contour/point.js';

/** The board's outline seen from the deck, over a stretch of its length. Mm; pairs are left and right. */
export interface OutlineInPlan {
  readonly length: number;
  /** Where a swallow's notch begins, `x`; the board's length where there is none. */
  readonly notchAt: readonly [number, number];
  /** Half-widths from the nose to the tail, as close as the mesh's rows: at the rail, and of a notch, 0 elsewhere. */
  readonly stations: readonly {
    readonly x: number;
    readonly outer: readonly [number, number];
    readonly inner: readonly [number, number];
  }[];
}

export function outlineInPlan(
  { surface, grid, length }: Pick<Board, 'surface' | 'grid' | 'length'>,
  { from, to }: Stretch,
): OutlineInPlan {
  const [left, right] = surface.outlines;
  const xs = [from, ...Array.from(grid.xs).filter((x) => x > from && x < to), to];
  return {
    length,
    notchAt: [left.notchAt, right.notchAt],
    stations: xs.map((x) => ({
      x,
      outer: [left.outer(x), right.outer(x)],
      inner: [left.inner(x), right.inner(x)],
    })),
  };
}

/**
 * One side of the outline as a line from nose to tail: the ends, and the sides of a swallow's notch, where the stretch
 * reaches them. Right is up: `y` is positive there.
 */
export function sideOf({ length, notchAt, stations }: OutlineInPlan, side: 'left' | 'right'): Point[] {
  const [sign, code] = side === 'right' ? ([1, 1] as const) : ([-1, 0] as const);
  const [from, to] = [stations[0]!.x, stations.at(-1)!.x];
  const notch = notchAt[code];
  const outer = stations.map(({ x, outer }): Point => [x, sign * outer[code]]);
  const inner = stations
    .filter(({ x }) => to >= length && x > notch)
    .map(({ x, inner }): Point => [x, sign * inner[code]]);
  const closing: Point[] =
    to < length ? [] : [...inner.reverse(), [notch < length ? Math.max(from, notch) : length, 0]];
  return [...(from <= 0 ? [[0, 0] as Point] : []), ...outer, ...closing];
}
