import type { Point } from '../../contour/point.js';
import { line } from 'd3-shape';
import { recorded } from './recorder.js';

/** One value over one stretch of a chart; the line breaks between stretches that are not joined. */
export interface Level {
  readonly from: number;
  readonly to: number;
  readonly value: number;
}

/**
 * The lines of levels over a chart, exact: one run for each level, broken between them, none for a value that is not
 * known.
 *
 * @param x where a place along lies in the drawing, mm
 * @param y where a value lies in the drawing, mm
 */
export function levelLines(
  levels: readonly Level[],
  x: (at: number) => number,
  y: (value: number) => number,
): Point[][] {
  const points = levels.flatMap(({ from, to, value }) => [{ at: from, value }, { at: to, value }, undefined]);
  const lines = line<(typeof points)[number]>()
    .defined((point) => point !== undefined && Number.isFinite(point.value))
    .x((point) => x(point!.at))
    .y((point) => y(point!.value));
  return recorded((context) => lines.context(context)(points)).runs;
}
