import type { Point } from '../../contour/point.js';

/**
 * A profile on a straight board, in steps along it: the lowest and the highest it reaches in each, mm. Whatever lies
 * in a step counts for all of it, so that two profiles whose envelopes keep apart do so themselves.
 */
export interface Envelope {
  readonly low: Float64Array;
  readonly high: Float64Array;
}

/** A step along the board, mm. */
export const STEP = 2;

/** @param outline closed, its foremost point at 0 */
export function envelopeOf(outline: readonly Point[]): Envelope {
  const steps = Math.max(1, Math.ceil(Math.max(...outline.map(([s]) => s)) / STEP));
  const low = new Float64Array(steps).fill(Infinity);
  const high = new Float64Array(steps).fill(-Infinity);
  outline.forEach((a, i) => {
    const b = outline[(i + 1) % outline.length]!;
    const [p, q] = a[0] <= b[0] ? [a, b] : [b, a];
    const slope = q[0] > p[0] ? (q[1] - p[1]) / (q[0] - p[0]) : 0;
    const at = (s: number) => p[1] + slope * (s - p[0]);
    for (let k = step(p[0], steps); k <= step(q[0], steps); k++) {
      const from = Math.max(p[0], k * STEP);
      const to = Math.min(q[0], (k + 1) * STEP);
      const ends = slope === 0 ? [p[1], q[1]] : [at(from), at(to)];
      low[k] = Math.min(low[k]!, ...ends);
      high[k] = Math.max(high[k]!, ...ends);
    }
  });
  return { low, high };
}

const step = (s: number, steps: number) => Math.min(steps - 1, Math.max(0, Math.floor(s / STEP)));

/**
 * How far the second must stand above the first for a saw cut of `gap` mm to go between them, the second `shift` steps
 * further along.
 */
export function standOff(first: Envelope, second: Envelope, shift: number, gap: number): number {
  const reach = Math.ceil(gap / STEP);
  /** What the cut takes upright where it is so many steps away; points of neighbouring steps may touch. */
  const upright = Array.from({ length: reach + 1 }, (_, i) =>
    Math.sqrt(Math.max(0, gap * gap - (STEP * Math.max(0, i - 1)) ** 2)),
  );
  let most = -Infinity;
  for (let k = 0; k < second.low.length; k++) {
    for (let away = -reach; away <= reach; away++) {
      const top = first.high[k + shift + away];
      if (top !== undefined) most = Math.max(most, top - second.low[k]! + upright[Math.abs(away)]!);
    }
  }
  return most;
}
