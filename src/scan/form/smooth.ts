import { solved } from '../place/fitted.js';

/**
 * Weights by which values at `xs` make the value at `x` of a local parabola: least squares with tricube weights over
 * `reach` to both sides, more where too few lie within. Values that are not numbers are passed over.
 *
 * Source: W. S. Cleveland, "Robust locally weighted regression and smoothing scatterplots", Journal of the American
 * Statistical Association 74 (1979), 829–836.
 */
export interface LocalWeights {
  /** Number of the first of the values that count. */
  readonly from: number;
  readonly near: Float64Array;
  readonly away: Float64Array;
}

/** Values at least within reach. */
const LEAST = 5;

export function localWeights(xs: Float64Array, x: number, reach: number): LocalWeights {
  let from = 0;
  while (from < xs.length && xs[from]! < x - reach) from++;
  let to = from;
  while (to < xs.length && xs[to]! <= x + reach) to++;
  while (to - from < Math.min(LEAST, xs.length)) {
    const takesBefore = from > 0 && (to === xs.length || x - xs[from - 1]! <= xs[to]! - x);
    if (takesBefore) from--;
    else to++;
  }
  const wide = Math.max(reach, 1.01 * Math.max(x - xs[from]!, xs[to - 1]! - x));
  const away = Float64Array.from({ length: to - from }, (_, i) => (xs[from + i]! - x) / wide);
  const near = away.map((u) => (1 - Math.abs(u) ** 3) ** 3);
  return { from, near, away };
}

/** The value of the local parabola; not-a-number where fewer than three values count, or none near the place. */
export function localValue({ from, near, away }: LocalWeights, valueOf: (i: number) => number): number {
  let [s0, s1, s2, s3, s4, t0, t1, t2] = [0, 0, 0, 0, 0, 0, 0, 0];
  let count = 0;
  let nearest = Infinity;
  for (let k = 0; k < near.length; k++) {
    const value = valueOf(from + k);
    if (Number.isNaN(value)) continue;
    const w = near[k]!;
    const u = away[k]!;
    count++;
    if (Math.abs(u) < nearest) nearest = Math.abs(u);
    s0 += w;
    s1 += w * u;
    s2 += w * u * u;
    s3 += w * u * u * u;
    s4 += w * u * u * u * u;
    t0 += w * value;
    t1 += w * u * value;
    t2 += w * u * u * value;
  }
  if (count < 3 || nearest > 0.5) return NaN;
  const [found] = solved([
    [s0, s1, s2, t0],
    [s1, s2, s3, t1],
    [s2, s3, s4, t2],
  ]);
  return found!;
}

/** Puts in the place of not-a-number what lies on a straight line between its neighbours; the nearest at the ends. */
export function filledIn(values: number[]): number[] {
  const known = values.flatMap((value, i) => (Number.isNaN(value) ? [] : [i]));
  if (known.length === 0 || known.length === values.length) return values;
  return values.map((value, i) => {
    if (!Number.isNaN(value)) return value;
    const after = known.find((k) => k > i);
    const before = known.findLast((k) => k < i);
    if (after === undefined) return values[before!]!;
    if (before === undefined) return values[after]!;
    return values[before]! + ((i - before) / (after - before)) * (values[after]! - values[before]!);
  });
}
