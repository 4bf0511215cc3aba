import { overlaps, type Box } from '../trace/box.js';

/**
 * What is left of a run of straight lines outside of boxes: runs of their own, x0, y0, x1, y1, …, mm.
 *
 * Each line is cut by the sides of a box after Liang and Barsky, A new concept and method for line clipping, ACM Trans.
 * Graphics 3 (1984), 1.
 */
export function outside(points: ArrayLike<number>, boxes: readonly Box[]): number[][] {
  const runs: number[][] = [];
  for (let i = 2; i < points.length; i += 2) {
    const [ax, ay, bx, by] = [points[i - 2]!, points[i - 1]!, points[i]!, points[i + 1]!];
    const around = { minX: Math.min(ax, bx), minY: Math.min(ay, by), maxX: Math.max(ax, bx), maxY: Math.max(ay, by) };
    let parts: (readonly [number, number])[] = WHOLE;
    for (const box of boxes) {
      if (!overlaps(box, around)) continue;
      const [from, to] = inside(box, ax, ay, bx, by);
      if (from >= to) continue;
      parts = parts
        .flatMap(([a, b]) => [[a, Math.min(b, from)] as const, [Math.max(a, to), b] as const])
        .filter(([a, b]) => a < b);
    }
    for (const [a, b] of parts) {
      const [x0, y0, x1, y1] = [ax + a * (bx - ax), ay + a * (by - ay), ax + b * (bx - ax), ay + b * (by - ay)];
      const run = runs.at(-1);
      if (run && run.at(-2) === x0 && run.at(-1) === y0) run.push(x1, y1);
      else runs.push([x0, y0, x1, y1]);
    }
  }
  return runs;
}

const WHOLE: (readonly [number, number])[] = [[0, 1]];

/** From which share of a line to which it lies in a box; from not below to where it does not. */
function inside({ minX, minY, maxX, maxY }: Box, ax: number, ay: number, bx: number, by: number): [number, number] {
  let [from, to] = [0, 1];
  for (const [at, step, low, high] of [
    [ax, bx - ax, minX, maxX],
    [ay, by - ay, minY, maxY],
  ] as const) {
    if (step === 0) {
      if (at <= low || at >= high) return [1, 0];
      continue;
    }
    const [a, b] = [(low - at) / step, (high - at) / step];
    from = Math.max(from, Math.min(a, b));
    to = Math.min(to, Math.max(a, b));
  }
  return [from, to];
}
