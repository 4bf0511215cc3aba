import { cutBy } from '../place/slice.js';
import type { Triangles } from '../triangles.js';

/** Rays of a half-section, keel and deck's middle included. */
export const RAYS = 97;

/** By what sections are freed of size: half of the width, half of the thickness, and the height of the middle, mm. */
export interface Frame {
  readonly half: Float64Array;
  readonly thick: Float64Array;
  readonly middle: Float64Array;
}

/**
 * Where sections are met by rays from their middle, freed of size, in planes square to x. Ray 0 goes down to the keel,
 * the last up to the deck, evenly between, on each side.
 *
 * Layout: how far out, a share, at `(plane · 2 + side) · RAYS + ray`; not-a-number where nothing was met.
 */
export function raysOf(mesh: Triangles, planes: Float64Array, frame: Frame, until: number): Float64Array {
  const reach = new Float64Array(planes.length * 2 * RAYS).fill(NaN);
  const step = Math.PI / (RAYS - 1);
  const half = (plane: number, side: number, u0: number, w0: number, u1: number, w1: number) => {
    const from = Math.atan2(u0, -w0) / step;
    const to = Math.atan2(u1, -w1) / step;
    const first = Math.max(0, Math.ceil(Math.min(from, to) - ON_RAY));
    const last = Math.min(RAYS - 1, Math.floor(Math.max(from, to) + ON_RAY));
    if (last - first > RAYS / 2) return;
    for (let ray = first; ray <= last; ray++) {
      const x = SINES[ray]!;
      const y = -COSINES[ray]!;
      const across = (u1 - u0) * y - (w1 - w0) * x;
      const share = across === 0 ? 0 : (w0 * x - u0 * y) / across;
      const held = share < 0 ? 0 : share > 1 ? 1 : share;
      const far = (u0 + held * (u1 - u0)) * x + (w0 + held * (w1 - w0)) * y;
      const at = (plane * 2 + side) * RAYS + ray;
      if (!(far <= reach[at]!)) reach[at] = far;
    }
  };
  cutBy(
    mesh,
    planes,
    (plane, y0, z0, y1, z1) => {
      const h = frame.half[plane]!;
      const t = frame.thick[plane]!;
      const m = frame.middle[plane]!;
      const [u0, w0, u1, w1] = [y0 / h, (z0 - m) / t, y1 / h, (z1 - m) / t];
      if (u0 >= 0 && u1 >= 0) half(plane, 1, u0, w0, u1, w1);
      else if (u0 <= 0 && u1 <= 0) half(plane, 0, -u0, w0, -u1, w1);
      else {
        const w = w0 + (u0 / (u0 - u1)) * (w1 - w0);
        if (u0 < 0) {
          half(plane, 0, -u0, w0, 0, w);
          half(plane, 1, 0, w, u1, w1);
        } else {
          half(plane, 1, u0, w0, 0, w);
          half(plane, 0, 0, w, -u1, w1);
        }
      }
    },
    until,
  );
  // On the centreline both sides are one.
  for (let plane = 0; plane < planes.length; plane++)
    for (const ray of [0, RAYS - 1]) {
      const left = plane * 2 * RAYS + ray;
      const right = left + RAYS;
      const mean = Number.isNaN(reach[left]!)
        ? reach[right]!
        : Number.isNaN(reach[right]!)
          ? reach[left]!
          : (reach[left]! + reach[right]!) / 2;
      reach[left] = mean;
      reach[right] = mean;
    }
  return reach;
}

/** A ray meets what ends this near to it, as a share of the step between rays. */
const ON_RAY = 1e-9;
export const SINES = Float64Array.from({ length: RAYS }, (_, i) => Math.sin((Math.PI * i) / (RAYS - 1)));
export const COSINES = Float64Array.from({ length: RAYS }, (_, i) => Math.cos((Math.PI * i) / (RAYS - 1)));
SINES[RAYS - 1] = 0;
