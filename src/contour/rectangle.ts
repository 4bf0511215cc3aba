import type { Point } from './point.js';

/** A rectangle around its middle, `length` along `x`: counter-clockwise from its low corner nearest to the nose, mm. */
export function rectangleAround([x, y]: Point, length: number, width: number): Point[] {
  return [
    [x - length / 2, y - width / 2],
    [x + length / 2, y - width / 2],
    [x + length / 2, y + width / 2],
    [x - length / 2, y + width / 2],
  ];
}
