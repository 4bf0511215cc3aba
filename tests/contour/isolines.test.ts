import { describe, expect, it } from 'vitest';
import { isolines, type Lattice } from '../../src/contour/isolines.js';

/** A lattice of `n` by `n` knots over a square from -1 to 1, with a value at each. */
function over(n: number, of: (x: number, y: number) => number): Lattice {
  const at = Array.from({ length: n * n }, (_, k) => [
    -1 + (2 * (k % n)) / (n - 1),
    -1 + (2 * Math.floor(k / n)) / (n - 1),
  ]);
  return {
    columns: n,
    x: Float64Array.from(at, ([x]) => x!),
    y: Float64Array.from(at, ([, y]) => y!),
    value: Float64Array.from(at, ([x, y]) => of(x!, y!)),
  };
}

describe('lines of one level', () => {
  // Closed form: a value that rises evenly has its level on a straight line.
  it('over an even slope are straight, and one line', () => {
    const lines = isolines(
      over(9, (x, y) => 2 * x + y),
      0.3,
    );
    expect(lines).toHaveLength(1);
    for (const [x, y] of lines[0]!) expect(2 * x + y).toBeCloseTo(0.3, 12);
    const ends = [lines[0]!.at(0)!, lines[0]!.at(-1)!].map(([, y]) => Math.abs(y));
    expect(ends).toEqual([expect.closeTo(1, 12), expect.closeTo(1, 12)]);
  });

  // Closed form: the level of x² + y² is a circle; between knots h apart the chords lie within h² / (4 r) of it.
  it('over a bowl are rings that close', () => {
    const n = 81;
    const lines = isolines(
      over(n, (x, y) => x * x + y * y),
      0.25,
    );
    expect(lines).toHaveLength(1);
    expect(lines[0]![0]).toEqual(lines[0]!.at(-1));
    for (const [x, y] of lines[0]!) expect(Math.abs(Math.hypot(x, y) - 0.5)).toBeLessThan((2 / (n - 1)) ** 2 / 2);
  });

  it('end where there is no value, and are none where no value is so high', () => {
    const half = over(21, (x, y) => (x > 0.5 ? NaN : y));
    const [line] = isolines(half, 0.05);
    for (const [x] of line!) expect(x).toBeLessThanOrEqual(0.5 + 1e-12);
    expect(isolines(half, 2)).toEqual([]);
  });
});
