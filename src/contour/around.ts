import type { Point } from './point.js';

/**
 * A regular polygon that goes around a circle: each of its sides touches it in the middle, the first corner half a side
 * after `x`. Counter-clockwise, mm.
 */
export function polygonAround([x, y]: Point, radius: number, sides: number): Point[] {
  const far = radius / Math.cos(Math.PI / sides);
  return Array.from({ length: sides }, (_, i): Point => {
    const angle = (2 * Math.PI * (i + 0.5)) / sides;
    return [x + far * Math.cos(angle), y + far * Math.sin(angle)];
  });
}
