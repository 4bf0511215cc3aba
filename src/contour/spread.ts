import type { Point } from './point.js';

/**
 * Mean square distance along `x` of a polygon's area from its centre of area, mm²: the square of its radius of
 * gyration. Either way around.
 */
export function spreadAlong(polygon: readonly Point[]): number {
  let [area, first, second] = [0, 0, 0];
  polygon.forEach(([x0, y0], i) => {
    const [x1, y1] = polygon[(i + 1) % polygon.length]!;
    const cross = x0 * y1 - x1 * y0;
    area += cross / 2;
    first += (cross * (x0 + x1)) / 6;
    second += (cross * (x0 * x0 + x0 * x1 + x1 * x1)) / 12;
  });
  return second / area - (first / area) ** 2;
}
