import type { SideCode, Strand, Surface } from './surface.js';
import { sharedPoints } from './weld.js';

/**
 * The surface as a grid of points: rows across the board, nose to tail, and columns around each half from the keel over the apex
 * to the deck's centreline. Rows and columns lie as close as the surface bends, so that the flat between them stays within
 * `CHORD_ERROR` of it.
 *
 * Layout: point (row, side, column) is number `(row · 2 + side) · columns + column`; its x, y, z stand at three times that number.
 */
export interface Grid {
  readonly xs: Float64Array;
  /** Places around the half-section, `v` of `Section`. */
  readonly vs: Float64Array;
  readonly rows: number;
  readonly columns: number;
  /** The column of the rail apex. */
  readonly apex: number;
  readonly positions: Float64Array;
  /** For every point the number of the one that stands for it; see `weld.ts`. */
  readonly same: Uint32Array;
  /** Row from which a notch parts the two halves; `rows` where there is none. */
  readonly notchRow: number;
}

/** How far the smooth surface may lie from the mesh, mm. Every wall is reported thinner by this much. */
export const CHORD_ERROR = 0.05;

/**
 * What is allowed between neighbouring rows and between neighbouring columns, mm. Both together, and the twist of a cell on top,
 * stay under `CHORD_ERROR`.
 */
const ROW_SAG = 0.016;
const COLUMN_SAG = 0.018;
/** Rows and columns are not split further than this, mm and share of a stretch: at a kink splitting would never end. */
const LEAST_ROW = 0.03;
const LEAST_COLUMN = 1 / 1024;
/** Strands by which the rows are chosen: the edge and the apex are among them. */
const TRIAL_STRANDS = 18;
/** Along a notch the sections end before the centreline and shrink to nothing at the tips, which no strand shows: so many parts at least. */
const NOTCH_PARTS = 24;
/** Sections at which the columns are chosen, beside the measured ones. */
const TRIAL_SECTIONS = 12;

export function gridOf(surface: Surface): Grid {
  const vs = columnsOf(surface);
  const strands = Array.from(vs, (v) => surface.strand(v));
  const trial = Array.from({ length: TRIAL_STRANDS + 1 }, (_, i) => surface.strand((3 * i) / TRIAL_STRANDS));
  const xs = rowsOf(surface, trial);
  const columns = vs.length;
  const positions = new Float64Array(xs.length * 2 * columns * 3);
  let at = 0;
  for (const x of xs) {
    const bottom = surface.bottom(x);
    const thickness = surface.thickness(x);
    for (const side of [0, 1] as const) {
      const half = (2 * side - 1) * surface.outlines[side].outer(x);
      for (const strand of strands) {
        const y = half * strand.across(x);
        const up = strand.up(x);
        positions[at++] = x;
        positions[at++] = y;
        positions[at++] = bottom + thickness * up + (surface.raised?.(x, y, up) ?? 0);
      }
    }
  }
  const notchAt = surface.outlines[1].notchAt;
  const grid = {
    xs,
    vs,
    rows: xs.length,
    columns,
    apex: vs.indexOf(2),
    positions,
    notchRow: notchAt < surface.length ? xs.indexOf(notchAt) : xs.length,
  };
  cutNotch(grid, surface);
  return { ...grid, same: sharedPoints(grid) };
}

/**
 * Parts `[low, high]` into as few parts as `flat` allows, none shorter than `least`: each as long as can be, found by growing and halving from
 * the length of the one before. Gives the rising starts of the parts.
 */
function part(
  low: number,
  high: number,
  least: number,
  flat: (low: number, high: number) => boolean,
  into: number[],
): void {
  let length = high - low;
  for (let from = low; from < high;) {
    into.push(from);
    let good = from;
    let bad = Infinity;
    let to = Math.min(high, from + length);
    while (true) {
      if (to - from <= least || flat(from, to)) good = to;
      else bad = to;
      if (good === high || (bad < Infinity && bad - good <= FINE * (bad - from))) break;
      to = bad === Infinity ? Math.min(high, from + (to - from) * GROW) : (good + bad) / 2;
    }
    length = good - from;
    from = good;
  }
}

/** How much longer a part is tried, and how near, as a share of it, its greatest length is found. */
const GROW = 2;
const FINE = 0.08;

/** The columns: places around the half-section between which no trial section bends by more than `COLUMN_SAG`. */
function columnsOf(surface: Surface): Float64Array {
  const between = Array.from({ length: TRIAL_SECTIONS - 1 }, (_, i) => (surface.length * (i + 1)) / TRIAL_SECTIONS);
  // The wider side bends the more, so its half is enough.
  const trials = [...surface.stations, ...between].map((x) => ({
    x,
    half: Math.max(surface.outlines[0].outer(x), surface.outlines[1].outer(x)),
    thickness: surface.thickness(x),
  }));
  const known = new Map<number, Float64Array>();
  // y and z of every trial section at one v.
  const pointsAt = (v: number) => {
    let points = known.get(v);
    if (!points) {
      const strand = surface.strand(v);
      points = new Float64Array(trials.length * 2);
      trials.forEach(({ x, half, thickness }, i) => {
        points![2 * i] = half * strand.across(x);
        points![2 * i + 1] = thickness * strand.up(x);
      });
      known.set(v, points);
    }
    return points;
  };
  const flat = (low: number, high: number) => {
    const a = pointsAt(low);
    const b = pointsAt(high);
    return [0.25, 0.5, 0.75].every((share) => {
      const p = pointsAt(low + (high - low) * share);
      for (let i = 0; i < p.length; i += 2) {
        if (chordDistance(p[i]!, p[i + 1]!, 0, a[i]!, a[i + 1]!, 0, b[i]!, b[i + 1]!, 0) > COLUMN_SAG) return false;
      }
      return true;
    });
  };
  const vs: number[] = [];
  for (const stretch of [0, 1, 2]) {
    part(stretch, stretch + 1, LEAST_COLUMN, flat, vs);
  }
  return Float64Array.from([...vs, 3]);
}

/** The rows: distances from the nose between which no trial strand bends by more than `ROW_SAG`. */
function rowsOf(surface: Surface, strands: readonly Strand[]): Float64Array {
  const sides: SideCode[] = surface.outlines[0] === surface.outlines[1] ? [1] : [0, 1];
  const known = new Map<number, Float64Array>();
  const pointsAt = (x: number) => {
    let points = known.get(x);
    if (!points) {
      points = new Float64Array(sides.length * strands.length * 3);
      let at = 0;
      const thickness = surface.thickness(x);
      const bottom = surface.bottom(x);
      for (const side of sides) {
        const half = surface.outlines[side].outer(x);
        for (const strand of strands) {
          const y = half * strand.across(x);
          const up = strand.up(x);
          points[at++] = x;
          points[at++] = y;
          points[at++] = bottom + thickness * up + (surface.raised?.(x, (2 * side - 1) * y, up) ?? 0);
        }
      }
      known.set(x, points);
    }
    return points;
  };
  // Split in a measure in which a round tip, where the half-width grows as the root of x, is as gentle as the rest.
  const measure = (x: number) => Math.acos(1 - (2 * x) / surface.length);
  const place = (u: number) => (surface.length * (1 - Math.cos(u))) / 2;
  const flat = (low: number, high: number) => {
    const x0 = place(low);
    const x1 = place(high);
    if (x1 - x0 < LEAST_ROW) return true;
    const a = pointsAt(x0);
    const b = pointsAt(x1);
    return [0.25, 0.5, 0.75].every((share) => {
      const p = pointsAt(place(low + (high - low) * share));
      for (let i = 0; i < p.length; i += 3) {
        if (
          chordDistance(p[i]!, p[i + 1]!, p[i + 2]!, a[i]!, a[i + 1]!, a[i + 2]!, b[i]!, b[i + 1]!, b[i + 2]!) > ROW_SAG
        ) {
          return false;
        }
      }
      return true;
    });
  };
  const xs: number[] = [];
  const { stations } = surface;
  for (let i = 0; i + 1 < stations.length; i++) {
    const from = measure(stations[i]!);
    const to = measure(stations[i + 1]!);
    const us: number[] = [];
    const parts = stations[i]! >= surface.outlines[1].notchAt ? NOTCH_PARTS : 1;
    for (let each = 0; each < parts; each++) {
      part(from + ((to - from) * each) / parts, from + ((to - from) * (each + 1)) / parts, 0, flat, us);
    }
    xs.push(stations[i]!, ...us.slice(1).map(place));
  }
  return Float64Array.from([...xs, surface.length]);
}

/** Distance of p from the straight line between a and b. */
function chordDistance(
  px: number,
  py: number,
  pz: number,
  ax: number,
  ay: number,
  az: number,
  bx: number,
  by: number,
  bz: number,
): number {
  const dx = bx - ax,
    dy = by - ay,
    dz = bz - az;
  const ex = px - ax,
    ey = py - ay,
    ez = pz - az;
  const length = dx * dx + dy * dy + dz * dz;
  const t = length > 0 ? Math.min(1, Math.max(0, (ex * dx + ey * dy + ez * dz) / length)) : 0;
  return Math.hypot(ex - t * dx, ey - t * dy, ez - t * dz);
}

/** Draws the columns that lie within a swallow's notch out to its side, where the section meets it. */
function cutNotch(grid: Omit<Grid, 'same'>, surface: Surface): void {
  const { columns, apex, positions } = grid;
  for (let row = grid.notchRow; row < grid.rows; row++) {
    for (const side of [0, 1] as const) {
      const inner = surface.outlines[side].inner(grid.xs[row]!);
      const first = (row * 2 + side) * columns;
      drawOut(positions, first, first + apex, 1, inner);
      drawOut(positions, first + columns - 1, first + apex, -1, inner);
    }
  }
}

/** From the centreline column `from` toward the apex column `to`: every point nearer the centreline than `inner` goes to where the chain passes it. */
function drawOut(positions: Float64Array, from: number, to: number, step: number, inner: number): void {
  const width = (i: number) => Math.abs(positions[3 * i + 1]!);
  const signed = Math.sign(positions[3 * to + 1]!) * inner;
  let out = from;
  while (out !== to && width(out) < inner) out += step;
  if (out === from) return;
  const before = out - step;
  const share = (inner - width(before)) / (width(out) - width(before) || 1);
  const z = positions[3 * before + 2]! + share * (positions[3 * out + 2]! - positions[3 * before + 2]!);
  for (let i = from; i !== out; i += step) {
    positions[3 * i + 1] = signed;
    positions[3 * i + 2] = z;
  }
}
