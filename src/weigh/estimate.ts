import type { Figure } from './usual.js';

/**
 * What is held of some unknowns: their likeliest values and how they may be off together. `covariance` is n × n, row by
 * row.
 */
export interface Estimate {
  readonly values: Float64Array;
  readonly covariance: Float64Array;
}

/** Before anything is weighed: each unknown off by its own spread, independently of the others. */
export function priorOf(unknowns: readonly Figure[]): Estimate {
  const n = unknowns.length;
  const covariance = new Float64Array(n * n);
  unknowns.forEach(({ spread }, i) => (covariance[i * n + i] = spread * spread));
  return { values: Float64Array.from(unknowns, ({ value }) => value), covariance };
}

/**
 * Takes in one weighing: of `parts[i]` times each unknown the scale said `weight`, give or take `spread` (one standard
 * deviation).
 *
 * This is least squares with the spreads as weights, one equation at a time: what comes out makes the sum of all
 * squared differences, each divided by its spread, the least. R. E. Kalman, J. Basic Eng. 82 (1960), without the
 * motion.
 */
export function updated(estimate: Estimate, parts: ArrayLike<number>, weight: number, spread: number): Estimate {
  const n = estimate.values.length;
  const shared = covarianceWith(estimate, parts);
  const expected = expectedOf(estimate, parts);
  const variance = expected.spread ** 2 + spread ** 2;
  const values = estimate.values.map((value, i) => value + (shared[i]! * (weight - expected.value)) / variance);
  const covariance = estimate.covariance.map((c, at) => c - (shared[Math.floor(at / n)]! * shared[at % n]!) / variance);
  return { values, covariance };
}

/** What `parts[i]` times each unknown is expected to come to, and its spread. */
export function expectedOf(estimate: Estimate, parts: ArrayLike<number>): Figure {
  const shared = covarianceWith(estimate, parts);
  let value = 0;
  let variance = 0;
  for (let i = 0; i < shared.length; i++) {
    value += parts[i]! * estimate.values[i]!;
    variance += parts[i]! * shared[i]!;
  }
  return { value, spread: Math.sqrt(Math.max(0, variance)) };
}

export function spreadOf({ covariance, values }: Estimate, i: number): number {
  return Math.sqrt(Math.max(0, covariance[i * values.length + i]!));
}

/** The covariance of each unknown with the sum of `parts[i]` times each: the covariance matrix times `parts`. */
function covarianceWith({ covariance, values }: Estimate, parts: ArrayLike<number>): Float64Array {
  const n = values.length;
  const shared = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < n; j++) shared[i]! += covariance[i * n + j]! * parts[j]!;
  }
  return shared;
}
