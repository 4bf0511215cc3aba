import type { Triangles } from '../triangles.js';
import { nextSide } from './mates.js';

/** What hangs together by shared sides. */
export interface Shell {
  /** Numbers of its triangles. */
  readonly members: Uint32Array;
  readonly low: readonly [number, number, number];
  readonly high: readonly [number, number, number];
  /** From corner to corner of its box. */
  readonly size: number;
  readonly area: number;
  /** Of its area, what the areas of its triangles come to as vectors: 0 for a closed shell, near 1 for a flat one. */
  readonly open: number;
}

/**
 * Turns the triangles of each shell one way, outward, in place, and gives the shells, the largest first, with how many
 * triangles were turned over.
 */
export function shellsOf({ positions, triangles }: Triangles, mates: Int32Array): { shells: Shell[]; turned: number } {
  const count = triangles.length / 3;
  const shellOf = new Int32Array(count).fill(-1);
  const isTurned = new Uint8Array(count);
  const waiting = new Uint32Array(count);
  const order = new Uint32Array(count);
  const starts: number[] = [];
  let found = 0;
  for (let first = 0; first < count; first++) {
    if (shellOf[first] !== -1) continue;
    starts.push(found);
    const shell = starts.length - 1;
    let depth = 0;
    waiting[depth++] = first;
    shellOf[first] = shell;
    while (depth > 0) {
      const t = waiting[--depth]!;
      order[found++] = t;
      for (let h = 3 * t; h < 3 * t + 3; h++) {
        const mate = mates[h]!;
        if (mate < 0) continue;
        const other = Math.floor(mate / 3);
        if (shellOf[other] !== -1) continue;
        shellOf[other] = shell;
        const isSame = triangles[mate] === triangles[nextSide(h)];
        isTurned[other] = isSame ? isTurned[t]! : 1 - isTurned[t]!;
        waiting[depth++] = other;
      }
    }
  }
  for (let t = 0; t < count; t++) if (isTurned[t] === 1) turn(triangles, t);
  const middle = middleOf(positions, triangles);
  let turned = 0;
  const shells = starts.map((start, i): Shell => {
    const members = order.subarray(start, starts[i + 1] ?? count);
    const { flux, ...shell } = measured(positions, triangles, members, middle);
    let flipped = 0;
    for (const t of members) flipped += isTurned[t]!;
    if (flux < 0) for (const t of members) turn(triangles, t);
    turned += flux < 0 ? members.length - flipped : flipped;
    return { members, ...shell };
  });
  return { shells: shells.sort((a, b) => b.size - a.size), turned };
}

function turn(triangles: Uint32Array, t: number): void {
  const b = triangles[3 * t + 1]!;
  triangles[3 * t + 1] = triangles[3 * t + 2]!;
  triangles[3 * t + 2] = b;
}

function middleOf(positions: Float64Array, triangles: Uint32Array): [number, number, number] {
  const sum: [number, number, number] = [0, 0, 0];
  for (let h = 0; h < triangles.length; h++)
    for (let axis = 0; axis < 3; axis++) sum[axis]! += positions[3 * triangles[h]! + axis]!;
  return [sum[0] / triangles.length, sum[1] / triangles.length, sum[2] / triangles.length];
}

function measured(p: Float64Array, triangles: Uint32Array, members: Uint32Array, middle: readonly number[]) {
  const low: [number, number, number] = [Infinity, Infinity, Infinity];
  const high: [number, number, number] = [-Infinity, -Infinity, -Infinity];
  let [area, flux, sumX, sumY, sumZ] = [0, 0, 0, 0, 0];
  for (const t of members) {
    for (let h = 3 * t; h < 3 * t + 3; h++)
      for (let axis = 0; axis < 3; axis++) {
        const value = p[3 * triangles[h]! + axis]!;
        if (value < low[axis]!) low[axis] = value;
        if (value > high[axis]!) high[axis] = value;
      }
    const a = 3 * triangles[3 * t]!;
    const b = 3 * triangles[3 * t + 1]!;
    const c = 3 * triangles[3 * t + 2]!;
    const ux = p[b]! - p[a]!;
    const uy = p[b + 1]! - p[a + 1]!;
    const uz = p[b + 2]! - p[a + 2]!;
    const vx = p[c]! - p[a]!;
    const vy = p[c + 1]! - p[a + 1]!;
    const vz = p[c + 2]! - p[a + 2]!;
    const nx = uy * vz - uz * vy;
    const ny = uz * vx - ux * vz;
    const nz = ux * vy - uy * vx;
    area += Math.sqrt(nx * nx + ny * ny + nz * nz);
    sumX += nx;
    sumY += ny;
    sumZ += nz;
    flux += nx * (p[a]! - middle[0]!) + ny * (p[a + 1]! - middle[1]!) + nz * (p[a + 2]! - middle[2]!);
  }
  const size = Math.hypot(high[0] - low[0], high[1] - low[1], high[2] - low[2]);
  return { low, high, size, area: area / 2, open: Math.hypot(sumX, sumY, sumZ) / (area || 1), flux };
}
