import type { Point } from '../../contour/point.js';
import type { Shape } from '../drawing.js';
import { line, polygon, text } from '../primitives.js';

/** A chart's field and how values lie in it, mm. */
export interface Frame {
  readonly width: number;
  readonly height: number;
  readonly x: (value: number) => number;
  readonly y: (value: number) => number;
}

/** A mark on an axis. */
export interface Tick {
  readonly at: number;
  readonly words: string;
}

const SMALL = 1.8;

/** The frame with its ticks: those below, those at the left. */
export function frameShapes({ width, height, x, y }: Frame, below: readonly Tick[], left: readonly Tick[]): Shape[] {
  const corners: Point[] = [
    [0, 0],
    [width, 0],
    [width, height],
    [0, height],
  ];
  return [
    polygon('dimension', corners),
    ...below.flatMap(({ at, words }): Shape[] => [
      line('dimension', [x(at), 0], [x(at), -1.5]),
      text(words, [x(at), -4], SMALL),
    ]),
    ...left.flatMap(({ at, words }): Shape[] => [
      line('dimension', [0, y(at)], [-1.5, y(at)]),
      text(words, [-2.5, y(at)], SMALL, 'right'),
    ]),
  ];
}

/** Values from `low` to `high` spread over a length, mm. */
export function scaled(low: number, high: number, length: number): (value: number) => number {
  return (value) => ((value - low) / (high - low || 1)) * length;
}

/** Round values between two, `unit` apart or 2, 5, 10… times as much, at most eight. */
export function roundSteps(low: number, high: number, unit: number): number[] {
  let step = unit;
  for (let i = 0; (high - low) / step > 8; i++) step *= i % 3 === 1 ? 2.5 : 2;
  const first = Math.ceil(low / step - 1e-9);
  const count = Math.floor(high / step + 1e-9) - first + 1;
  return Array.from({ length: Math.max(0, count) }, (_, i) => (first + i) * step);
}
