import type { Point } from './point.js';

const ORIGIN: Point = [0, 0];

/**
 * A point turned about the origin, by `angle` in radians, counter-clockwise, and then moved as the origin is to `to`,
 * mm.
 */
export function turned([x, y]: Point, angle: number, to: Point = ORIGIN): Point {
  const cos = Math.cos(angle);
  const sin = Math.sin(angle);
  return [to[0] + x * cos - y * sin, to[1] + x * sin + y * cos];
}
