import type { BoardSpec } from '../job/job.js';
import { hermite, monotone, monotoneSlopes, type Curve } from './monotone.js';
import { outlineOf, type Outline } from './outline.js';
import { edgeShare, sectionOf, type Section } from './section.js';

/** 0 is the left side, 1 the right: the sign of `y` is `2 · side − 1`. */
export type SideCode = 0 | 1;

/**
 * The finished surface, smooth. A point is found by its distance from the nose `x` (mm), its side, and its place `v` around the
 * half-section (see `Section`); it is given in the board frame, mm.
 */
export interface Surface {
  readonly length: number;
  readonly outlines: readonly [left: Outline, right: Outline];
  /** Height of the bottom on the centreline. */
  readonly bottom: Curve;
  /** Thickness on the centreline. */
  readonly thickness: Curve;
  /** Every `x` at which something was measured, rising, both tips included. */
  readonly stations: readonly number[];
  /** How far above the drawing the true surface lies at `x`, `y`, `up` (of `Section`), mm; absent where it is as drawn. */
  raised?(x: number, y: number, up: number): number;
  /** The half-section between its stations at one `v`: `across` and `up` as functions of `x`. */
  strand(v: number): Strand;
}

/** One line of the surface from nose to tail, freed of size. */
export interface Strand {
  across(x: number): number;
  up(x: number): number;
}

export function surfaceOf(spec: BoardSpec): Surface {
  const right = outlineOf(spec.right, spec.length);
  const left = spec.left ? outlineOf(spec.left, spec.length) : right;
  const at = spec.profile.map((p) => p.x);
  const bottom = monotone(
    at,
    spec.profile.map((p) => p.bottom),
  );
  const thickness = monotone(
    at,
    spec.profile.map((p) => p.thickness),
  );
  const size = (x: number) => ({ half: right.outer(x), thickness: thickness(x) });
  const shares = spec.sections.map((s) => edgeShare(s, size(s.x).half));
  const sections = spec.sections.map((s, i) => sectionOf(s, size(s.x), shares[i] ?? nearestShare(shares, i)));
  const sectionAt = Float64Array.from(spec.sections, (s) => s.x);

  const stations = [0, ...at, ...sectionAt, ...spec.right.points.map((p) => p.x), spec.length];
  if (right.notchAt < spec.length) stations.push(right.notchAt);
  if (spec.left) stations.push(...spec.left.points.map((p) => p.x), left.notchAt);

  return {
    length: spec.length,
    outlines: [left, right],
    bottom,
    thickness,
    stations: [...new Set(stations.filter((x) => x >= 0 && x <= spec.length))].sort((a, b) => a - b),
    strand: (v) => strandAt(v, sectionAt, sections),
  };
}

/** The edge of the nearest section that has a hard one, for a soft section to be parted at. */
function nearestShare(shares: readonly (number | undefined)[], i: number): number | undefined {
  for (let d = 1; d < shares.length; d++) {
    const near = shares[i - d] ?? shares[i + d];
    if (near !== undefined) return near;
  }
  return undefined;
}

function strandAt(v: number, at: Float64Array, sections: readonly Section[]): Strand {
  const across = Float64Array.from(sections, (s) => s.across(v));
  const up = Float64Array.from(sections, (s) => s.up(v));
  const n = at.length;
  if (n === 1) return { across: () => across[0]!, up: () => up[0]! };
  const acrossSlopes = new Float64Array(n);
  const upSlopes = new Float64Array(n);
  monotoneSlopes(at, across, acrossSlopes);
  monotoneSlopes(at, up, upSlopes);
  let i = 0;
  // Called with x mostly rising, so the interval of the last call is the place to begin.
  const seek = (x: number) => {
    while (i > 0 && x < at[i]!) i--;
    while (i < n - 2 && x >= at[i + 1]!) i++;
  };
  const run = (values: Float64Array, slopes: Float64Array) => (x: number) => {
    if (x <= at[0]!) return values[0]!;
    if (x >= at[n - 1]!) return values[n - 1]!;
    seek(x);
    return hermite(x, at[i]!, at[i + 1]!, values[i]!, values[i + 1]!, slopes[i]!, slopes[i + 1]!);
  };
  return { across: run(across, acrossSlopes), up: run(up, upSlopes) };
}

/** A point of the surface, board frame, mm; a swallow's notch is cut out of it later. */
export function pointOn(surface: Surface, strand: Strand, side: SideCode, x: number): [number, number, number] {
  const y = (2 * side - 1) * surface.outlines[side].outer(x) * strand.across(x);
  const up = strand.up(x);
  return [x, y, surface.bottom(x) + surface.thickness(x) * up + (surface.raised?.(x, y, up) ?? 0)];
}
