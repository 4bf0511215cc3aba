import type { Point } from '../../contour/point.js';
import { line } from 'd3-shape';
import { recorded } from './recorder.js';

/** A straight line from each point to the next, mm: what was computed, and nothing between. */
export function lineThrough(points: readonly Point[]): Point[] {
  const straight = line<Point>();
  return recorded((context) => straight.context(context)([...points])).runs[0] ?? [];
}
