/** Coefficients of the polynomial of least squares, lowest power first; `weights` all 1 where absent. */
export function polynomialOf(
  degree: number,
  xs: ArrayLike<number>,
  ys: ArrayLike<number>,
  weights?: ArrayLike<number>,
): number[] {
  const n = degree + 1;
  const rows = Array.from({ length: n }, () => new Array<number>(n + 1).fill(0));
  for (let i = 0; i < xs.length; i++) {
    const weight = weights ? weights[i]! : 1;
    for (let r = 0; r < n; r++) {
      const power = weight * xs[i]! ** r;
      for (let c = 0; c < n; c++) rows[r]![c]! += power * xs[i]! ** c;
      rows[r]![n]! += power * ys[i]!;
    }
  }
  return solved(rows);
}

/** Solves linear equations by Gaussian elimination with row exchanges; a row is coefficients and what they come to. */
export function solved(rows: number[][]): number[] {
  const n = rows.length;
  for (let column = 0; column < n; column++) {
    let best = column;
    for (let r = column + 1; r < n; r++) if (Math.abs(rows[r]![column]!) > Math.abs(rows[best]![column]!)) best = r;
    [rows[column], rows[best]] = [rows[best]!, rows[column]!];
    const pivot = rows[column]!;
    for (let r = column + 1; r < n; r++) {
      const share = rows[r]![column]! / (pivot[column]! || 1);
      for (let c = column; c <= n; c++) rows[r]![c]! -= share * pivot[c]!;
    }
  }
  const found = new Array<number>(n).fill(0);
  for (let r = n - 1; r >= 0; r--) {
    let rest = rows[r]![n]!;
    for (let c = r + 1; c < n; c++) rest -= rows[r]![c]! * found[c]!;
    found[r] = rows[r]![r] === 0 ? 0 : rest / rows[r]![r]!;
  }
  return found;
}

/**
 * The same, told less by what lies far off: fitted again with bisquare weights, six median deviations out counting for
 * nothing.
 *
 * Source: A. E. Beaton and J. W. Tukey, "The fitting of power series, meaning polynomials, illustrated on
 * band-spectroscopic data", Technometrics 16 (1974), 147–185.
 */
export function robustPolynomial(degree: number, xs: ArrayLike<number>, ys: ArrayLike<number>): number[] {
  let found = polynomialOf(degree, xs, ys);
  const weights = new Float64Array(xs.length);
  for (let round = 0; round < ROUNDS; round++) {
    const off = Float64Array.from(xs, (x, i) => Math.abs(ys[i]! - valueAt(found, x)));
    const far = 6 * medianOf(off);
    if (!(far > 0)) return found;
    for (let i = 0; i < off.length; i++) weights[i] = Math.max(0, 1 - (off[i]! / far) ** 2) ** 2;
    found = polynomialOf(degree, xs, ys, weights);
  }
  return found;
}

const ROUNDS = 4;

export const valueAt = (polynomial: readonly number[], x: number): number =>
  polynomial.reduceRight((sum, each) => sum * x + each, 0);

/** The value in the middle of all, not-a-number of none. */
export function medianOf(values: ArrayLike<number>): number {
  const sorted = Float64Array.from(values).sort();
  return sorted.length === 0 ? NaN : sorted[sorted.length >> 1]!;
}
