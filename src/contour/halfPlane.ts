import type { Point } from './point.js';

/**
 * What of a polygon lies on one side of a straight line: where `nx x + ny y` is no more than `most`, mm. Counter-
 * clockwise stays so. Parts that fall asunder stay joined along the line.
 * Source: Sutherland and Hodgman, "Reentrant polygon clipping", Communications of the ACM 17(1), 1974.
 */
export function inHalfPlane(polygon: readonly Point[], [nx, ny]: Point, most: number): Point[] {
  const over = polygon.map(([x, y]) => nx * x + ny * y - most);
  return polygon.flatMap(([x, y], i): Point[] => {
    const next = (i + 1) % polygon.length;
    const [a, b] = [over[i]!, over[next]!];
    const kept: Point[] = a <= 0 ? [[x, y]] : [];
    if (a * b >= 0) return kept;
    const share = a / (a - b);
    const [x1, y1] = polygon[next]!;
    return [...kept, [x + share * (x1 - x), y + share * (y1 - y)]];
  });
}
