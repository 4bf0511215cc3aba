import { hasInk, type Ink } from './ink.js';
import { MARK_REACH } from './seam.js';
import { WORD_HEIGHT } from './seamMark.js';
import type { Pane, Window } from './tile.js';

/** Kept free around a name, and the steps of the search, mm. */
const AIR = 2;
const STEP = 5;

/**
 * Where a drawing's name fits on a page: within its own lines, touching none of any drawing's, away from the marks at the
 * page's edges; the first place from the left, nearest to the middle of its height.
 *
 * @param near the ink of all drawings near the window.
 * @param own the drawing's ink, `up` mm higher in the run.
 * @returns the middle of the name in the run's frame, or undefined when there is no room.
 */
export function roomForName(
  near: Ink,
  own: Ink,
  up: number,
  window: Window,
  pane: Pane,
  width: number,
): { readonly x: number; readonly y: number } | undefined {
  const half = width / 2 + AIR;
  const tall = WORD_HEIGHT / 2 + AIR;
  const edge = 2 * MARK_REACH + half;
  for (let x = window.x + edge; x <= window.x + pane.width - edge; x += STEP) {
    const at = Math.floor(x) - own.from;
    const low = Math.max(own.low[at] ?? Infinity, window.y - up) + up + tall;
    const high = Math.min(own.high[at] ?? -Infinity, window.y + pane.height - up) + up - tall;
    const middle = (low + high) / 2;
    for (let off = 0; off <= (high - low) / 2; off += STEP) {
      for (const y of off === 0 ? [middle] : [middle + off, middle - off]) {
        if (!hasInk(near, { minX: x - half, minY: y - tall, maxX: x + half, maxY: y + tall })) return { x, y };
      }
    }
  }
  return undefined;
}
