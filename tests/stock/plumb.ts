import type { Mesh } from '../../src/board/mesh.js';

/** Heights at which a plumb line meets a mesh: every triangle asked. */
export function plumb(
  { positions: p, triangles }: Pick<Mesh, 'positions' | 'triangles'>,
  x: number,
  y: number,
): number[] {
  const heights: number[] = [];
  for (let t = 0; t < triangles.length; t += 3) {
    const [a, b, c] = [0, 1, 2].map((k) => 3 * triangles[t + k]!) as [number, number, number];
    const area = (p[b]! - p[a]!) * (p[c + 1]! - p[a + 1]!) - (p[c]! - p[a]!) * (p[b + 1]! - p[a + 1]!);
    if (area === 0) continue;
    const u = ((x - p[a]!) * (p[c + 1]! - p[a + 1]!) - (p[c]! - p[a]!) * (y - p[a + 1]!)) / area;
    const v = ((p[b]! - p[a]!) * (y - p[a + 1]!) - (x - p[a]!) * (p[b + 1]! - p[a + 1]!)) / area;
    if (u < -1e-9 || v < -1e-9 || u + v > 1 + 1e-9) continue;
    heights.push(p[a + 2]! + u * (p[b + 2]! - p[a + 2]!) + v * (p[c + 2]! - p[a + 2]!));
  }
  return heights;
}
