import type { Figure } from './usual.js';

/** What is held of some unknowns: their likeliest values and how they may be off together. `covariance` is n × n, row by row. */
export interface Belief {
  readonly values: Float64Array;
  readonly covariance: Float64Array;
}

/** Before anything is weighed: each unknown off by its own spread, independently of the others. */
export function beliefOf(unknowns: readonly Figure[]): Belief {
  const n = unknowns.length;
  const covariance = new Float64Array(n * n);
  unknowns.forEach(({ spread }, i) => (covariance[i * n + i] = spread * spread));
  return { values: Float64Array.from(unknowns, ({ value }) => value), covariance };
}

/**
 * Takes in one weighing: of `parts[i]` times each unknown the scale said `weight`, give or take `spread` (one standard deviation).
 *
 * This is least squares with the spreads as weights, one equation at a time: what comes out makes the sum of all squared differences, each
 * divided by its spread, the least. R. E. Kalman, J. Basic Eng. 82 (1960), without the motion.
 */
export function learn(belief: Belief, parts: ArrayLike<number>, weight: number, spread: number): Belief {
  const n = belief.values.length;
  const reach = reachOf(belief, parts);
  const expected = expectedOf(belief, parts);
  const variance = expected.spread ** 2 + spread ** 2;
  const values = belief.values.map((value, i) => value + (reach[i]! * (weight - expected.value)) / variance);
  const covariance = belief.covariance.map((c, at) => c - (reach[Math.floor(at / n)]! * reach[at % n]!) / variance);
  return { values, covariance };
}

/** What `parts[i]` times each unknown is expected to come to, and its spread. */
export function expectedOf(belief: Belief, parts: ArrayLike<number>): Figure {
  const reach = reachOf(belief, parts);
  let value = 0;
  let variance = 0;
  for (let i = 0; i < reach.length; i++) {
    value += parts[i]! * belief.values[i]!;
    variance += parts[i]! * reach[i]!;
  }
  return { value, spread: Math.sqrt(Math.max(0, variance)) };
}

export function spreadOf({ covariance, values }: Belief, i: number): number {
  return Math.sqrt(Math.max(0, covariance[i * values.length + i]!));
}

/** How each unknown moves together with the sum: covariance times parts. */
function reachOf({ covariance, values }: Belief, parts: ArrayLike<number>): Float64Array {
  const n = values.length;
  const reach = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < n; j++) reach[i]! += covariance[i * n + j]! * parts[j]!;
  }
  return reach;
}
