import type { Point } from './point.js';

/**
 * From where to where a polygon, either way around, reaches up and down at one place along, mm; undefined beside it.
 */
export function spanAt(points: readonly Point[], at: number): [low: number, high: number] | undefined {
  let low = Infinity;
  let high = -Infinity;
  // Asked for a hundred thousand times a sheet: nothing is made in the loop.
  for (let i = 0, last = points.at(-1)!; i < points.length; last = points[i++]!) {
    const x0 = last[0];
    const x1 = points[i]![0];
    if ((x0 > at && x1 > at) || (x0 < at && x1 < at)) continue;
    const y0 = last[1];
    const y1 = points[i]![1];
    const y = x0 === x1 ? y0 : y0 + ((at - x0) / (x1 - x0)) * (y1 - y0);
    low = Math.min(low, y, x0 === x1 ? y1 : y);
    high = Math.max(high, y, x0 === x1 ? y1 : y);
  }
  return low <= high ? [low, high] : undefined;
}
