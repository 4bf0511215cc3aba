import { momentsOf } from '../contour/area.js';
import type { Point } from '../contour/point.js';
import type { KeepOutSpec } from '../job/job.js';

/** Where a keep-out is held and numbered: its centre of area, board frame, mm. */
export function keepOutMiddle(keepOut: KeepOutSpec): Point {
  if (keepOut.kind !== 'polygon') return [keepOut.x, keepOut.y];
  const { x, y } = momentsOf(keepOut.points.map(([px, py]) => ({ x: px, y: py })));
  return [x, y];
}

/**
 * The corners of a keep-out that is no disc, counter-clockwise, a box from its left end toward the nose, board frame,
 * mm.
 */
export function keepOutCorners(keepOut: Exclude<KeepOutSpec, { kind: 'disc' }>): readonly Point[] {
  if (keepOut.kind === 'polygon') return keepOut.points;
  const { x, y, length, width } = keepOut;
  return [
    [x - length / 2, y - width / 2],
    [x + length / 2, y - width / 2],
    [x + length / 2, y + width / 2],
    [x - length / 2, y + width / 2],
  ];
}
