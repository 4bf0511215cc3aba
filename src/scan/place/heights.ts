import type { Triangles } from '../triangles.js';
import { cutBy } from './slice.js';

/**
 * A mesh looked at in planes square to x: how far it reaches to both sides, and its highest and lowest points at
 * places across, shares of half of the width there. Not-a-number where there is nothing.
 *
 * Layout: `top` and `bottom` hold one number for each share of `SHARES`, plane after plane.
 */
export interface Heights {
  readonly xs: Float64Array;
  readonly left: Float64Array;
  readonly right: Float64Array;
  readonly top: Float64Array;
  readonly bottom: Float64Array;
}

/** From the left rail to the right; alike on both sides of the middle. */
export const SHARES = [-0.8, -0.6, -0.4, -0.2, 0, 0.2, 0.4, 0.6, 0.8];
export const MIDDLE = 4;

export function heightsOf(mesh: Triangles, xs: Float64Array): Heights {
  const n = SHARES.length;
  const left = new Float64Array(xs.length).fill(NaN);
  const right = new Float64Array(xs.length).fill(NaN);
  cutBy(mesh, xs, (plane, y0, _, y1) => {
    const [low, high] = y0 < y1 ? [y0, y1] : [y1, y0];
    if (!(low >= left[plane]!)) left[plane] = low;
    if (!(high <= right[plane]!)) right[plane] = high;
  });
  const top = new Float64Array(xs.length * n).fill(NaN);
  const bottom = new Float64Array(xs.length * n).fill(NaN);
  cutBy(mesh, xs, (plane, y0, z0, y1, z1) => {
    const middle = (left[plane]! + right[plane]!) / 2;
    const half = (right[plane]! - left[plane]!) / 2;
    const [low, high] = y0 < y1 ? [y0, y1] : [y1, y0];
    for (let i = 0; i < n; i++) {
      const y = middle + SHARES[i]! * half;
      if (y < low || y >= high) continue;
      const z = z0 + ((y - y0) / (y1 - y0)) * (z1 - z0);
      const at = plane * n + i;
      if (!(z <= top[at]!)) top[at] = z;
      if (!(z >= bottom[at]!)) bottom[at] = z;
    }
  });
  return { xs, left, right, top, bottom };
}
