import type { BoardSpec, SectionStation } from '../job/spec/board.js';
import { hermiteWeights, monotone, monotoneSlopes, type Curve } from './monotone.js';
import { outlineOf, type Outline } from './outline.js';
import { edgeShare, sectionOf, type HalfSection } from './section.js';

/** 0 is the left side, 1 the right: the sign of `y` is `2 · side − 1`. */
export type SideCode = 0 | 1;

/**
 * The finished surface, smooth. A point is found by its distance from the nose `x` (mm), its side, and its place `v`
 * around the half-section (see `Section`); it is given in the board frame, mm.
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
  /**
   * How far above the drawing the true surface lies at `x`, `y`, `up` (of `Section`), mm; absent where it is as drawn.
   */
  raised?(x: number, y: number, up: number): number;
  /** The lines of the surface from nose to tail at some places `v`. */
  lengthwise(vs: ArrayLike<number>): LengthwiseCurves;
}

/** Lines of the surface from nose to tail, freed of size. */
export interface LengthwiseCurves {
  /**
   * `across` and `up` of `Section` where each line passes `x` on one side, in the order of the lines; overwritten by
   * the next call.
   */
  at(x: number, side: SideCode): { readonly across: Float64Array; readonly up: Float64Array };
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
  const lines = linesOf(spec.sections, right, thickness);
  const leftLines = spec.leftSections ? linesOf(spec.leftSections, left, thickness) : lines;

  const stations = [0, ...at, ...lines.at, ...spec.right.points.map((p) => p.x), spec.length];
  if (right.notchAt < spec.length) stations.push(right.notchAt);
  if (spec.left) stations.push(...spec.left.points.map((p) => p.x), left.notchAt);

  return {
    length: spec.length,
    outlines: [left, right],
    bottom,
    thickness,
    stations: [...new Set(stations.filter((x) => x >= 0 && x <= spec.length))].sort((a, b) => a - b),
    lengthwise: (vs) => {
      const onRight = lengthwiseAt(vs, lines);
      const onLeft = leftLines === lines ? onRight : lengthwiseAt(vs, leftLines);
      return { at: (x, side) => (side === 1 ? onRight : onLeft)(x) };
    },
  };
}

/** The sections of one side with their places, rising, mm. */
interface SectionLines {
  readonly at: Float64Array;
  readonly sections: readonly HalfSection[];
}

function linesOf(stations: readonly SectionStation[], outline: Outline, thickness: Curve): SectionLines {
  const size = (x: number) => ({ half: outline.outer(x), thickness: thickness(x) });
  const shares = stations.map((s) => edgeShare(s, size(s.x).half));
  return {
    at: Float64Array.from(stations, (s) => s.x),
    sections: stations.map((s, i) => sectionOf(s, size(s.x), shares[i] ?? nearestShare(shares, i))),
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

/** Lines between the sections: monotone cubics along the board, whose weights at one `x` are the same for all. */
function lengthwiseAt(vs: ArrayLike<number>, { at, sections }: SectionLines) {
  const lines = vs.length;
  const n = at.length;
  const values = { across: new Float64Array(n * lines), up: new Float64Array(n * lines) };
  const slopes = { across: new Float64Array(n * lines), up: new Float64Array(n * lines) };
  const line = new Float64Array(n);
  const steep = new Float64Array(n);
  for (const part of ['across', 'up'] as const) {
    for (let c = 0; c < lines; c++) {
      for (let i = 0; i < n; i++) line[i] = sections[i]![part](vs[c]!);
      // On the centreline exactly, however the section was measured: both halves share those points.
      if (part === 'across' && (c === 0 || c === lines - 1) && isNothing(line)) line.fill(0);
      if (n > 1) monotoneSlopes(at, line, steep);
      for (let i = 0; i < n; i++) {
        values[part][i * lines + c] = line[i]!;
        slopes[part][i * lines + c] = steep[i]!;
      }
    }
  }
  const found = { across: new Float64Array(lines), up: new Float64Array(lines) };
  let last = NaN;
  return (x: number) => {
    if (x === last) return found;
    last = x;
    const held = Math.min(at[n - 1]!, Math.max(at[0]!, x));
    let i = 0;
    while (i < n - 2 && held >= at[i + 1]!) i++;
    const next = Math.min(i + 1, n - 1);
    const [y0, y1, m0, m1] = hermiteWeights(held, at[i]!, at[next]!);
    for (const part of ['across', 'up'] as const) {
      const value = values[part];
      const slope = slopes[part];
      const into = found[part];
      for (let c = 0, a = i * lines, b = next * lines; c < lines; c++, a++, b++)
        into[c] = y0 * value[a]! + y1 * value[b]! + m0 * slope[a]! + m1 * slope[b]!;
    }
    return found;
  };
}

/** Whether a line keeps to the centreline but for rounding. */
function isNothing(line: Float64Array): boolean {
  return line.every((share) => Math.abs(share) < 1e-9);
}

/**
 * Writes where strands pass `x` on one side, board frame, mm, as x, y, z from place `from` on; a swallow's notch is cut
 * out of it later.
 */
export function pointsAcross(
  surface: Surface,
  side: SideCode,
  x: number,
  { across, up }: ReturnType<LengthwiseCurves['at']>,
  into: Float64Array,
  from: number,
): void {
  const half = (2 * side - 1) * surface.outlines[side].outer(x);
  const bottom = surface.bottom(x);
  const thickness = surface.thickness(x);
  for (let c = 0, k = from; c < across.length; c++, k += 3) {
    // Added 0 makes of -0 a 0.
    const y = half * across[c]! + 0;
    into[k] = x;
    into[k + 1] = y;
    into[k + 2] = bottom + thickness * up[c]! + (surface.raised?.(x, y, up[c]!) ?? 0);
  }
}

/** A point of the surface, board frame, mm. */
export function pointOn(surface: Surface, v: number, side: SideCode, x: number): [number, number, number] {
  const point = new Float64Array(3);
  pointsAcross(surface, side, x, surface.lengthwise([v]).at(x, side), point, 0);
  return [point[0]!, point[1]!, point[2]!];
}
