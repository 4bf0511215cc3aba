import type { Triangles } from '../triangles.js';
import { eigenOf } from './eigen.js';
import type { Rigid } from './rigid.js';

/**
 * Lays triangles with their middle at the origin along their principal axes: the longest along x, the thinnest along z,
 * right-handed. Each triangle counts by its area, over all of which its moments are taken, so that how densely it was
 * measured counts for nothing.
 *
 * Source of the moments of a triangle: any text on mass properties of polyhedra, e.g. D. Eberly, "Polyhedral Mass
 * Properties" (2002).
 */
export function alongAxes({ positions: p, triangles }: Triangles): Rigid {
  let area = 0;
  const sum = [0, 0, 0];
  const s = [0, 0, 0, 0, 0, 0];
  const [ox, oy, oz] = [p[3 * triangles[0]!]!, p[3 * triangles[0]! + 1]!, p[3 * triangles[0]! + 2]!];
  for (let t = 0; t < triangles.length; t += 3) {
    const i = 3 * triangles[t]!;
    const j = 3 * triangles[t + 1]!;
    const k = 3 * triangles[t + 2]!;
    const [ax, ay, az] = [p[i]! - ox, p[i + 1]! - oy, p[i + 2]! - oz];
    const [bx, by, bz] = [p[j]! - ox, p[j + 1]! - oy, p[j + 2]! - oz];
    const [cx, cy, cz] = [p[k]! - ox, p[k + 1]! - oy, p[k + 2]! - oz];
    const [ux, uy, uz] = [bx - ax, by - ay, bz - az];
    const [vx, vy, vz] = [cx - ax, cy - ay, cz - az];
    const size = Math.sqrt((uy * vz - uz * vy) ** 2 + (uz * vx - ux * vz) ** 2 + (ux * vy - uy * vx) ** 2) / 2;
    area += size;
    const [mx, my, mz] = [ax + bx + cx, ay + by + cy, az + bz + cz];
    sum[0]! += (size * mx) / 3;
    sum[1]! += (size * my) / 3;
    sum[2]! += (size * mz) / 3;
    const w = size / 12;
    s[0]! += w * (ax * ax + bx * bx + cx * cx + mx * mx);
    s[1]! += w * (ax * ay + bx * by + cx * cy + mx * my);
    s[2]! += w * (ax * az + bx * bz + cx * cz + mx * mz);
    s[3]! += w * (ay * ay + by * by + cy * cy + my * my);
    s[4]! += w * (ay * az + by * bz + cy * cz + my * mz);
    s[5]! += w * (az * az + bz * bz + cz * cz + mz * mz);
  }
  const [x, y, z] = [sum[0]! / area, sum[1]! / area, sum[2]! / area];
  const about = (value: number, m: number) => value / area - m;
  const { vectors } = eigenOf([
    [about(s[0]!, x * x), about(s[1]!, x * y), about(s[2]!, x * z)],
    [about(s[1]!, x * y), about(s[3]!, y * y), about(s[4]!, y * z)],
    [about(s[2]!, x * z), about(s[4]!, y * z), about(s[5]!, z * z)],
  ]);
  const [a, b] = [vectors[0]!, vectors[1]!];
  const c = [a[1]! * b[2]! - a[2]! * b[1]!, a[2]! * b[0]! - a[0]! * b[2]!, a[0]! * b[1]! - a[1]! * b[0]!];
  const at = [x + ox, y + oy, z + oz];
  const along = (axis: readonly number[]) => -(axis[0]! * at[0]! + axis[1]! * at[1]! + axis[2]! * at[2]!);
  return { turn: [...a, ...b, ...c], shift: [along(a), along(b), along(c)] };
}
