import { area as areaOf, line as lineOf } from 'd3-shape';
import type { Point } from './primitives.js';

/** What `d3-shape` draws on, so that lines reach a drawing as numbers: as text it would round them to three digits. */
interface Recorder {
  readonly runs: Point[][];
  moveTo(x: number, y: number): void;
  lineTo(x: number, y: number): void;
  closePath(): void;
}

function recorder(): Recorder {
  const runs: Point[][] = [];
  return {
    runs,
    moveTo: (x, y) => void runs.push([[x, y]]),
    lineTo: (x, y) => void runs[runs.length - 1]!.push([x, y]),
    closePath: () => undefined,
  };
}

/** One value over one stretch of a chart; the line breaks between stretches that are not joined. */
export interface Level {
  readonly from: number;
  readonly to: number;
  readonly value: number;
}

/**
 * The lines of levels over a chart, exact, made by `d3-shape`: one run for each level, broken between them.
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
  const out = recorder();
  lineOf<(typeof points)[number]>()
    .defined((point) => point !== undefined && Number.isFinite(point.value))
    .x((point) => x(point!.at))
    .y((point) => y(point!.value))
    .digits(null)
    .context(out as unknown as CanvasRenderingContext2D)(points);
  return out.runs;
}

/** A line from point to point, mm, made by `d3-shape`. */
export function lineThrough(points: readonly Point[]): Point[] {
  const out = recorder();
  lineOf<Point>()
    .digits(null)
    .context(out as unknown as CanvasRenderingContext2D)([...points]);
  return out.runs[0] ?? [];
}

/** The outline of a band over one stretch, by `d3-shape`: `from` and `to` are where it begins and ends across, `low` and `high` its values, mm. */
export function bandOutline(from: number, to: number, low: number, high: number): Point[] {
  const out = recorder();
  areaOf<number>()
    .x((x) => x)
    .y0(low)
    .y1(high)
    .digits(null)
    .context(out as unknown as CanvasRenderingContext2D)([from, to]);
  return out.runs[0] ?? [];
}
