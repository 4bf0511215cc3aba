import type { Point } from './point.js';

/**
 * Values at the knots of a lattice that lies anyhow in the plane: knot `row · columns + column` at `x`, `y`. Where
 * there is no value it is NaN.
 */
export interface Lattice {
  readonly columns: number;
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly value: Float64Array;
}

/**
 * The lines along which values drawn straight between the knots are at one level, each as long as it goes on. Every
 * cell is two triangles, so that no line forks; a knot at the level counts as over it.
 */
export function isolines({ columns, x, y, value }: Lattice, level: number): Point[][] {
  const count = value.length;
  const rows = count / columns;
  const isOver = (i: number) => value[i]! >= level;
  /** From the edge on which a line comes into a triangle to that on which it leaves it, higher values to its left. */
  const next = new Map<number, number>();
  const begun = new Set<number>();
  const walk = (corners: readonly [number, number, number]) => {
    if (corners.some((i) => Number.isNaN(value[i]!))) return;
    let enters = -1;
    let leaves = -1;
    corners.forEach((i, k) => {
      const j = corners[(k + 1) % 3]!;
      if (isOver(i) && !isOver(j)) leaves = edge(i, j, count);
      if (!isOver(i) && isOver(j)) enters = edge(i, j, count);
    });
    if (enters < 0) return;
    next.set(enters, leaves);
    begun.add(leaves);
  };
  for (let row = 0; row + 1 < rows; row++) {
    for (let column = 0; column + 1 < columns; column++) {
      const i = row * columns + column;
      walk([i, i + columns, i + columns + 1]);
      walk([i, i + columns + 1, i + 1]);
    }
  }
  const at = (key: number): Point => {
    const [i, j] = [Math.floor(key / count), key % count];
    const share = (level - value[i]!) / (value[j]! - value[i]!);
    return [x[i]! + share * (x[j]! - x[i]!), y[i]! + share * (y[j]! - y[i]!)];
  };
  // Open lines first, from where nothing leads to them; what is left then are rings.
  const starts = [...next.keys()].filter((key) => !begun.has(key));
  const lines: Point[][] = [];
  for (const start of [...starts, ...next.keys()]) {
    if (!next.has(start)) continue;
    const points = [at(start)];
    for (let key = start, to = next.get(key); to !== undefined; key = to, to = next.get(key)) {
      next.delete(key);
      points.push(at(to));
    }
    lines.push(points);
  }
  return lines;
}

/** An edge by its two knots, whichever comes first. */
const edge = (i: number, j: number, count: number) => (i < j ? i * count + j : j * count + i);
