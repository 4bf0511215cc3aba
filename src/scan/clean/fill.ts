import { distance3 } from './distance.js';

/** What closes a rim. */
export interface Filling {
  readonly triangles: readonly number[];
  /** How wide the hole is where it is not merely long: four times its area by its rim; of a round hole its diameter. */
  readonly width: number;
}

/** Rims of more points than this are closed from their middle point by point. */
const MOST = 4000;

/** Closes a rim by cutting off, one after the other, the corner whose neighbours lie nearest to each other. */
export function fillingOf(rim: readonly number[], positions: Float64Array): Filling {
  const triangles: number[] = [];
  let perimeter = 0;
  const next = rim.map((_, i) => (i + 1) % rim.length);
  const before = rim.map((_, i) => (i + rim.length - 1) % rim.length);
  const bridge = Float64Array.from(rim, (_, i) => distance3(positions, rim[before[i]!]!, rim[next[i]!]!));
  for (let i = 0; i < rim.length; i++) perimeter += distance3(positions, rim[i]!, rim[next[i]!]!);
  const isCut = new Uint8Array(rim.length);
  let area = 0;
  const add = (a: number, b: number, c: number) => {
    triangles.push(a, b, c);
    area += areaOf(positions, a, b, c);
  };
  let start = 0;
  for (let left = rim.length; left > 3; left--) {
    let best = start;
    if (rim.length <= MOST)
      for (let i = next[start]!; i !== start; i = next[i]!) if (bridge[i]! < bridge[best]!) best = i;
    add(rim[before[best]!]!, rim[best]!, rim[next[best]!]!);
    isCut[best] = 1;
    const [from, to] = [before[best]!, next[best]!];
    next[from] = to;
    before[to] = from;
    for (const i of [from, to]) bridge[i] = distance3(positions, rim[before[i]!]!, rim[next[i]!]!);
    start = to;
  }
  add(rim[before[start]!]!, rim[start]!, rim[next[start]!]!);
  return { triangles, width: perimeter > 0 ? (4 * area) / perimeter : 0 };
}

function areaOf(p: Float64Array, i: number, j: number, k: number): number {
  const [a, b, c] = [3 * i, 3 * j, 3 * k];
  const [ux, uy, uz] = [p[b]! - p[a]!, p[b + 1]! - p[a + 1]!, p[b + 2]! - p[a + 2]!];
  const [vx, vy, vz] = [p[c]! - p[a]!, p[c + 1]! - p[a + 1]!, p[c + 2]! - p[a + 2]!];
  return Math.hypot(uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx) / 2;
}
