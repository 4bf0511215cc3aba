import type { Vertex } from './vertex.js';

/** An arc by its centre, radius, and the angle it starts at and sweeps through, radians, counter-clockwise positive. */
export interface Arc {
  readonly cx: number;
  readonly cy: number;
  readonly radius: number;
  readonly start: number;
  readonly sweep: number;
}

/**
 * The arc from `a` to `b` by the bulge of `a`, or undefined when the way is straight. The bulge is the tangent of a
 * quarter of the sweep.
 */
export function arcBetween(a: Vertex, b: Vertex): Arc | undefined {
  const bulge = a.bulge ?? 0;
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  const chord = Math.hypot(dx, dy);
  if (bulge === 0 || chord === 0) return undefined;
  const toCentre = (1 - bulge * bulge) / (4 * bulge);
  const cx = (a.x + b.x) / 2 - dy * toCentre;
  const cy = (a.y + b.y) / 2 + dx * toCentre;
  return {
    cx,
    cy,
    radius: (chord * (1 + bulge * bulge)) / (4 * Math.abs(bulge)),
    start: Math.atan2(a.y - cy, a.x - cx),
    sweep: 4 * Math.atan(bulge),
  };
}

/** How many chords stand for an arc of `radius` and `sweep` without leaving it by more than `tolerance`, mm. */
export function chordsFor(radius: number, sweep: number, tolerance: number): number {
  if (radius <= tolerance) return Math.max(1, Math.ceil(Math.abs(sweep) / (Math.PI / 4)));
  return Math.max(1, Math.ceil(Math.abs(sweep) / (2 * Math.acos(1 - tolerance / radius))));
}
