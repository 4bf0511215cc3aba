/**
 * Eigenvalues, falling, and eigenvectors of a symmetric matrix given row by row; `vectors[i]` belongs to `values[i]`.
 *
 * Source: C. G. J. Jacobi, "Über ein leichtes Verfahren, die in der Theorie der Säcularstörungen vorkommenden
 * Gleichungen numerisch aufzulösen", Journal für die reine und angewandte Mathematik 30 (1846), 51–94.
 */
export function eigenOf(matrix: readonly (readonly number[])[]): { values: number[]; vectors: number[][] } {
  const n = matrix.length;
  const a = matrix.map((row) => [...row]);
  const v = a.map((_, i) => a.map((__, j): number => (i === j ? 1 : 0)));
  for (let sweep = 0; sweep < SWEEPS; sweep++) {
    let off = 0;
    for (let p = 0; p < n; p++) for (let q = p + 1; q < n; q++) off += a[p]![q]! ** 2;
    if (off === 0) break;
    for (let p = 0; p < n; p++)
      for (let q = p + 1; q < n; q++) {
        if (a[p]![q] === 0) continue;
        const theta = (a[q]![q]! - a[p]![p]!) / (2 * a[p]![q]!);
        const t = (theta < 0 ? -1 : 1) / (Math.abs(theta) + Math.sqrt(theta * theta + 1));
        const c = 1 / Math.sqrt(t * t + 1);
        const s = t * c;
        for (let k = 0; k < n; k++) {
          const [x, y] = [a[k]![p]!, a[k]![q]!];
          a[k]![p] = c * x - s * y;
          a[k]![q] = s * x + c * y;
        }
        for (let k = 0; k < n; k++) {
          const [x, y] = [a[p]![k]!, a[q]![k]!];
          a[p]![k] = c * x - s * y;
          a[q]![k] = s * x + c * y;
          const [l, m] = [v[k]![p]!, v[k]![q]!];
          v[k]![p] = c * l - s * m;
          v[k]![q] = s * l + c * m;
        }
      }
  }
  const order = a.map((_, i) => i).sort((i, j) => a[j]![j]! - a[i]![i]!);
  return { values: order.map((i) => a[i]![i]!), vectors: order.map((i) => v.map((row) => row[i]!)) };
}

/** More sweeps than any matrix so small needs. */
const SWEEPS = 60;
