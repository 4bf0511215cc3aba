import type { Point } from './point.js';

/** What of a line lies between two places along x, in as many parts as it comes. */
export function betweenAlong(points: readonly Point[], from: number, to: number): Point[][] {
  const parts: Point[][] = [];
  for (let i = 1; i < points.length; i++) {
    const [a, b] = [points[i - 1]!, points[i]!];
    const at = (x: number): Point => [x, a[0] === b[0] ? a[1] : a[1] + ((x - a[0]) / (b[0] - a[0])) * (b[1] - a[1])];
    const [low, high] = [Math.max(from, Math.min(a[0], b[0])), Math.min(to, Math.max(a[0], b[0]))];
    if (low > high) continue;
    const [start, end] = a[0] <= b[0] ? [low, high] : [high, low];
    const [p, q] = a[0] === b[0] ? [a, b] : [start === a[0] ? a : at(start), end === b[0] ? b : at(end)];
    const last = parts.at(-1);
    const before = last?.at(-1);
    if (last && before![0] === p[0] && before![1] === p[1]) last.push(q);
    else parts.push([p, q]);
  }
  return parts;
}
