import type { Mesh } from '../../src/board/mesh.js';

/**
 * A body given by two angles, `u` around (−π to π) and `v` from pole to pole (−π/2 to π/2), as an outward mesh of about
 * `fine` steps around.
 */
export function meshOfBody(at: (u: number, v: number) => [number, number, number], fine: number): Mesh {
  const [around, up] = [fine, fine / 2];
  const positions = new Float64Array((around + 1) * (up + 1) * 3);
  for (let j = 0; j <= up; j++) {
    for (let i = 0; i <= around; i++) {
      positions.set(
        at(-Math.PI + (2 * Math.PI * i) / around, -Math.PI / 2 + (Math.PI * j) / up),
        3 * (j * (around + 1) + i),
      );
    }
  }
  const corners: number[] = [];
  const normals: number[] = [];
  const add = (a: number, b: number, c: number) => {
    const p = [a, b, c].map((n) => positions.subarray(3 * n, 3 * n + 3)) as [Float64Array, Float64Array, Float64Array];
    const [u, v] = [1, 2].map((n) => [0, 1, 2].map((axis) => p[n]![axis]! - p[0][axis]!)) as [number[], number[]];
    const n = [u[1]! * v[2]! - u[2]! * v[1]!, u[2]! * v[0]! - u[0]! * v[2]!, u[0]! * v[1]! - u[1]! * v[0]!];
    const size = Math.hypot(...n);
    if (size < 1e-9) return;
    corners.push(a, b, c);
    normals.push(...n.map((each) => each / size));
  };
  const outward = isOutward(at);
  for (let j = 0; j < up; j++) {
    for (let i = 0; i < around; i++) {
      const a = j * (around + 1) + i;
      const [b, c, d] = [a + 1, a + around + 2, a + around + 1];
      if (outward) {
        add(a, b, c);
        add(a, c, d);
      } else {
        add(a, c, b);
        add(a, d, c);
      }
    }
  }
  return {
    positions,
    triangles: Uint32Array.from(corners),
    normals: Float64Array.from(normals),
    patches: new Uint8Array(corners.length / 3),
    chordError: 0,
  };
}

/** Whether u × v points away from the middle, at one place of the body. */
function isOutward(at: (u: number, v: number) => [number, number, number]): boolean {
  const [p, q, r] = [at(0.1, 0.1), at(0.11, 0.1), at(0.1, 0.11)];
  const [u, v] = [q, r].map((each) => each.map((value, i) => value - p[i]!)) as [number[], number[]];
  const n = [u[1]! * v[2]! - u[2]! * v[1]!, u[2]! * v[0]! - u[0]! * v[2]!, u[0]! * v[1]! - u[1]! * v[0]!];
  return n[0]! * p[0] + n[1]! * p[1] + n[2]! * p[2] > 0;
}
