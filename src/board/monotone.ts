/** A function of one variable that runs through given values without overshooting between them. */
export type Curve = (x: number) => number;

/** What the slope must be at an end; where absent, it is taken from the nearest values. */
export interface EndSlopes {
  readonly first?: number;
  readonly last?: number;
}

/**
 * Monotone cubic through `(xs[i], ys[i])`, `xs` strictly rising; constant beyond the ends. Hits every value exactly,
 * keeps the order of the values between them and is smooth to the first derivative.
 *
 * Source: M. Steffen, "A simple method for monotonic interpolation in one dimension", Astronomy and Astrophysics 239
 * (1990), 443–450.
 */
export function monotone(xs: ArrayLike<number>, ys: ArrayLike<number>, ends: EndSlopes = {}): Curve {
  const n = xs.length;
  if (n === 1) return () => ys[0]!;
  const slopes = new Float64Array(n);
  monotoneSlopes(xs, ys, slopes, ends);
  return (x) => {
    if (x <= xs[0]!) return ys[0]!;
    if (x >= xs[n - 1]!) return ys[n - 1]!;
    let low = 0;
    let high = n - 1;
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if (xs[middle]! <= x) low = middle;
      else high = middle;
    }
    const [y0, y1, m0, m1] = hermiteWeights(x, xs[low]!, xs[high]!);
    return y0 * ys[low]! + y1 * ys[high]! + m0 * slopes[low]! + m1 * slopes[high]!;
  };
}

/** Fills `slopes` with Steffen's slope at each value. All arrays of one length, at least 2. */
export function monotoneSlopes(
  xs: ArrayLike<number>,
  ys: ArrayLike<number>,
  slopes: Float64Array,
  ends: EndSlopes = {},
): void {
  const n = xs.length;
  const secant = (i: number) => (ys[i + 1]! - ys[i]!) / (xs[i + 1]! - xs[i]!);
  for (let i = 1; i < n - 1; i++) {
    const before = xs[i]! - xs[i - 1]!;
    const after = xs[i + 1]! - xs[i]!;
    const s0 = secant(i - 1);
    const s1 = secant(i);
    const parabola = (s0 * after + s1 * before) / (before + after);
    slopes[i] = (Math.sign(s0) + Math.sign(s1)) * Math.min(Math.abs(s0), Math.abs(s1), Math.abs(parabola) / 2);
  }
  slopes[0] = ends.first ?? endSlope(xs, secant, 0, 1, n);
  slopes[n - 1] = ends.last ?? endSlope(xs, secant, n - 2, n - 3, n);
}

/** Slope of the parabola through the last three values at the end, limited so that the end interval stays monotone. */
function endSlope(xs: ArrayLike<number>, secant: (i: number) => number, near: number, next: number, n: number): number {
  const s = secant(near);
  if (n === 2) return s;
  const h = xs[near + 1]! - xs[near]!;
  const h2 = xs[next + 1]! - xs[next]!;
  const slope = s * (1 + h / (h + h2)) - secant(next) * (h / (h + h2));
  if (slope * s <= 0) return 0;
  return Math.abs(slope) > 2 * Math.abs(s) ? 2 * s : slope;
}

/**
 * What the values (y) and the slopes (m) at the ends of `[x0, x1]` count for at `x` in the cubic over it; y0 alone
 * where the ends are one.
 */
export function hermiteWeights(x: number, x0: number, x1: number): [y0: number, y1: number, m0: number, m1: number] {
  const h = x1 - x0;
  if (h === 0) return [1, 0, 0, 0];
  const t = (x - x0) / h;
  const u = 1 - t;
  return [u * u * (1 + 2 * t), t * t * (3 - 2 * t), u * u * t * h, -t * t * u * h];
}
