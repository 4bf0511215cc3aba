import type { Point } from '../../contour/point.js';
import type { Shape } from '../drawing.js';
import { line } from '../primitives.js';

/** A line in dashes, mm: layers have one line each, so dashes are drawn. */
export function dashed(points: readonly Point[], dash = 3, gap = 1.5): Shape[] {
  const shapes: Shape[] = [];
  let phase = 0;
  for (let i = 1; i < points.length; i++) {
    const [ax, ay] = points[i - 1]!;
    const [bx, by] = points[i]!;
    const length = Math.hypot(bx - ax, by - ay);
    if (length === 0) continue;
    const at = (d: number): Point => [ax + ((bx - ax) * d) / length, ay + ((by - ay) * d) / length];
    let d = -phase;
    for (; d < length; d += dash + gap) {
      const [from, to] = [Math.max(0, d), Math.min(length, d + dash)];
      if (to > from) shapes.push(line('mark', at(from), at(to)));
    }
    phase = (phase + length) % (dash + gap);
  }
  return shapes;
}
