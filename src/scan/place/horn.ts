import { eigenOf } from './eigen.js';
import type { Nine, Rigid } from './rigid.js';

type Point = readonly [number, number, number];

/**
 * The turn and shift that bring points onto others with the least sum of squares; at least three pairs, not on one
 * line.
 *
 * Source: B. K. P. Horn, "Closed-form solution of absolute orientation using unit quaternions", Journal of the Optical
 * Society of America A 4 (1987), 629–642; the scale is left at 1.
 *
 * @param weights what each pair counts for; all the same where absent
 */
export function hornOf(from: readonly Point[], to: readonly Point[], weights?: readonly number[]): Rigid {
  const a = middleOf(from, weights);
  const b = middleOf(to, weights);
  const s = [0, 0, 0, 0, 0, 0, 0, 0, 0];
  from.forEach((p, i) => {
    const q = to[i]!;
    const weight = weights?.[i] ?? 1;
    for (let row = 0; row < 3; row++)
      for (let column = 0; column < 3; column++)
        s[3 * row + column]! += weight * (p[row]! - a[row]!) * (q[column]! - b[column]!);
  });
  return { ...withMiddles(quaternionOf(s), a, b) };
}

/** The turn, as the unit quaternion of the largest eigenvalue of Horn's matrix; `s` sums of products, row by row. */
export function quaternionOf(s: readonly number[]): readonly number[] {
  const [xx, xy, xz, yx, yy, yz, zx, zy, zz] = s as Nine;
  return eigenOf([
    [xx + yy + zz, yz - zy, zx - xz, xy - yx],
    [yz - zy, xx - yy - zz, xy + yx, zx + xz],
    [zx - xz, xy + yx, yy - xx - zz, yz + zy],
    [xy - yx, zx + xz, yz + zy, zz - xx - yy],
  ]).vectors[0]!;
}

/** The turn of a unit quaternion, with the shift that brings one middle onto the other. */
export function withMiddles(quaternion: readonly number[], a: Point, b: Point): Rigid {
  const [w, x, y, z] = quaternion as [number, number, number, number];
  const turn = [
    w * w + x * x - y * y - z * z,
    2 * (x * y - w * z),
    2 * (x * z + w * y),
    2 * (y * x + w * z),
    w * w - x * x + y * y - z * z,
    2 * (y * z - w * x),
    2 * (z * x - w * y),
    2 * (z * y + w * x),
    w * w - x * x - y * y + z * z,
  ];
  const at = (row: number) => turn[3 * row]! * a[0] + turn[3 * row + 1]! * a[1] + turn[3 * row + 2]! * a[2];
  return { turn, shift: [b[0] - at(0), b[1] - at(1), b[2] - at(2)] };
}

function middleOf(points: readonly Point[], weights: readonly number[] | undefined): [number, number, number] {
  const sum: [number, number, number] = [0, 0, 0];
  let whole = 0;
  points.forEach((p, i) => {
    const weight = weights?.[i] ?? 1;
    whole += weight;
    for (let axis = 0; axis < 3; axis++) sum[axis]! += weight * p[axis]!;
  });
  return [sum[0] / whole, sum[1] / whole, sum[2] / whole];
}
