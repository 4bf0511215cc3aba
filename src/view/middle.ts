import { momentsOf } from '../contour/area.js';
import type { Point } from '../contour/point.js';
import { straight } from '../contour/straight.js';

/** The centre of area of a closed outline, mm, whichever way it runs around. */
export function middleOf(outline: readonly Point[]): Point {
  const { x, y } = momentsOf(straight(outline));
  return [x, y];
}
