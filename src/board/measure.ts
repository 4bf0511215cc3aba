import type { Mesh } from './mesh.js';
import type { Surface } from './surface.js';

/**
 * Volume inside a closed, outward-oriented mesh, litres: the sum of the tetrahedra from the origin to each triangle
 * (divergence theorem).
 */
export function volumeOf({ positions: p, triangles }: Mesh): number {
  let sixfold = 0;
  for (let t = 0; t < triangles.length; t += 3) {
    const a = 3 * triangles[t]!;
    const b = 3 * triangles[t + 1]!;
    const c = 3 * triangles[t + 2]!;
    sixfold +=
      p[a]! * (p[b + 1]! * p[c + 2]! - p[b + 2]! * p[c + 1]!) +
      p[a + 1]! * (p[b + 2]! * p[c]! - p[b]! * p[c + 2]!) +
      p[a + 2]! * (p[b]! * p[c + 1]! - p[b + 1]! * p[c]!);
  }
  return sixfold / 6 / 1e6;
}

/** Intervals over the half circle that maps the board's length; even. */
const AREA_INTERVALS = 512;

/** Area of the outline in plan, m². Integrated over `x = L(1 − cos u)/2`, in which round tips are smooth too. */
export function planAreaOf(surface: Surface): number {
  const { length, outlines } = surface;
  const width = (x: number) => outlines.reduce((sum, o) => sum + o.outer(x) - o.inner(x), 0);
  const step = Math.PI / AREA_INTERVALS;
  const ordinates = Float64Array.from({ length: AREA_INTERVALS + 1 }, (_, i) => {
    const u = i * step;
    return width((length * (1 - Math.cos(u))) / 2) * (length / 2) * Math.sin(u);
  });
  return simpson(ordinates, step) / 1e6;
}

/**
 * Simpson's first rule over evenly spaced ordinates, an odd number of them; exact for cubics.
 * Source: any naval architecture text, e.g. C. B. Barrass and D. R. Derrett, "Ship Stability for Masters and Mates",
 * ch. 10.
 */
export function simpson(ordinates: ArrayLike<number>, step: number): number {
  const last = ordinates.length - 1;
  if (last < 2 || last % 2 !== 0)
    throw new RangeError(`Simpson's rule takes an odd number of ordinates, at least 3, not ${last + 1}`);
  let sum = ordinates[0]! + ordinates[last]!;
  for (let i = 1; i < last; i++) sum += (i % 2 ? 4 : 2) * ordinates[i]!;
  return (sum * step) / 3;
}
