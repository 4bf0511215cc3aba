import type { Point } from '../../contour/point.js';
import { area } from 'd3-shape';
import { recorded } from './recorder.js';

/**
 * The outline of a band over one stretch, mm: `from` and `to` are where it begins and ends along, `low` and `high` its
 * values.
 */
export function bandOutline(from: number, to: number, low: number, high: number): Point[] {
  const band = area<number>()
    .x((x) => x)
    .y0(low)
    .y1(high);
  return recorded((context) => band.context(context)([from, to])).runs[0] ?? [];
}
