import type { Point } from './point.js';

/** Area of what of a polygon, either way around, lies between two places along `x`, mm². */
export function areaInStrip(polygon: readonly Point[], from: number, to: number): number {
  let area = 0;
  let x0 = polygon[polygon.length - 1]![0];
  let y0 = polygon[polygon.length - 1]![1];
  // Asked for every place a dot may take: nothing is made in the loop.
  for (const pair of polygon) {
    const x1 = pair[0];
    const y1 = pair[1];
    const a = Math.min(to, Math.max(from, x0));
    const b = Math.min(to, Math.max(from, x1));
    if (a !== b) area -= (y0 + (((a + b) / 2 - x0) / (x1 - x0)) * (y1 - y0)) * (b - a);
    x0 = x1;
    y0 = y1;
  }
  return Math.abs(area);
}
