import type { Board } from '../board/board.js';
import { nearestOn } from '../contour/nearest.js';
import type { Point } from '../contour/point.js';
import { isShort } from './isShort.js';
import type { SawnStrip } from './sawn.js';
import type { Skin } from './skin.js';

/** Places along the blank at which the board is tried. */
const TRIED = 9;

/**
 * The points of the skin that are short wherever the board is laid in the blank, because the blank as seen from above
 * reaches no further: it is too narrow there, or too short.
 *
 * @param over what stands over the points as the board lies, mm
 * @param asked what is to stand over the board, mm
 */
export function outOfReach(
  { at, strip }: Skin,
  strips: readonly SawnStrip[],
  blank: Board,
  length: number,
  over: Float64Array,
  points: Uint32Array,
  asked: number,
): Uint32Array {
  const short = points.filter((i) => isShort(over[i]!, asked));
  if (short.length === 0) return short;
  const room = blank.length - length - 2 * asked;
  const alongs =
    room > 0
      ? Array.from({ length: TRIED }, (_, i) => asked + (room * i) / (TRIED - 1))
      : [(blank.length - length) / 2];
  const depth = [0, 1].map((side) => depthWithin(halfOutline(blank, side as 0 | 1)));
  return short.filter((i) => {
    const { moved } = strips[strip[i]!]!;
    const x = at[3 * i]!;
    const y = at[3 * i + 1]! - moved.at - moved.slope * x;
    return alongs.every((along) => isShort(depth[y < 0 ? 0 : 1]!(x + along, Math.abs(y)), asked));
  });
}

function halfOutline({ grid, surface, length }: Board, side: 0 | 1): Point[] {
  const { outer } = surface.outlines[side];
  return [[0, 0], ...Array.from(grid.xs, (x): Point => [x, outer(x)]), [length, 0]];
}

/** How far a place of a half lies within its outline, mm; negative outside. */
function depthWithin(outline: readonly Point[]): (x: number, y: number) => number {
  return (x, y) => {
    let least = Infinity;
    let isWithin = false;
    for (let i = 1; i < outline.length; i++) {
      const [a, b] = [outline[i - 1]!, outline[i]!];
      const [px, py] = nearestOn(a, b, [x, y]);
      least = Math.min(least, Math.hypot(x - px, y - py));
      if (a[0] <= x && x < b[0]) isWithin = y < a[1] + ((b[1] - a[1]) * (x - a[0])) / (b[0] - a[0]);
    }
    return isWithin ? least : -least;
  };
}
