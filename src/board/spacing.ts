import { cutNotch } from './notch.js';
import { pointsAcross, type SideCode, type Surface } from './surface.js';

/**
 * Where to lay rows and columns so that the flat between two of them stays near the surface: as close as the lines
 * across them bend. A chord over a stretch `h` of a curve lies `|C″| h² / 8` off it at most (C. de Boor, "A Practical
 * Guide to Splines", ch. III), `C″` taken square to the curve.
 */

/** Trial places a stretch of the half-section and a stretch between two stations are looked at in. */
const COLUMN_TRIALS = 64;
const ROW_TRIALS = 8;
/** Sections at which the columns are chosen, beside the measured ones; strands by which the rows are. */
const TRIAL_SECTIONS = 24;
const TRIAL_STRANDS = 30;

/** Places around the half-section, `v` of `Section`: the ends of its stretches are among them. */
export function columnsOf(surface: Surface, sag: number): Float64Array {
  const between = Array.from({ length: TRIAL_SECTIONS }, (_, i) => (surface.length * i) / TRIAL_SECTIONS);
  const vs = Float64Array.from({ length: 3 * COLUMN_TRIALS + 1 }, (_, i) => i / COLUMN_TRIALS);
  const strands = surface.lengthwise(vs);
  const points = new Float64Array(3 * vs.length);
  const sides = sidesOf(surface);
  const found = Array.from({ length: 3 }, () => new Float64Array(COLUMN_TRIALS + 1));
  for (const x of [...surface.stations, ...between]) {
    for (const side of sides) {
      pointsAcross(surface, side, x, strands.at(x, side), points, 0);
      found.forEach((need, stretch) => raise(need, points, 3 * stretch * COLUMN_TRIALS, sag));
    }
  }
  const places = found.flatMap((need, stretch) => parts(need).map((share) => stretch + share));
  return Float64Array.from([...places, 3]);
}

/** Distances from the nose, every station among them, for a grid of the given columns. */
export function rowsOf(surface: Surface, vs: Float64Array, sag: number): Float64Array {
  const { stations, length } = surface;
  const lines = linesOf(surface, vs);
  const points = new Float64Array(3 * lines.count);
  const along = new Float64Array(3 * lines.count * (ROW_TRIALS + 1));
  const xs: number[] = [];
  for (let i = 0; i + 1 < stations.length; i++) {
    const from = toTurn(stations[i]!, length);
    const to = toTurn(stations[i + 1]!, length);
    const place = (share: number) => fromTurn(from + share * (to - from), length);
    for (let k = 0; k <= ROW_TRIALS; k++) {
      lines.at(place(k / ROW_TRIALS), points);
      for (let line = 0; line < lines.count; line++)
        along.set(points.subarray(3 * line, 3 * line + 3), 3 * (line * (ROW_TRIALS + 1) + k));
    }
    const need = new Float64Array(ROW_TRIALS + 1);
    for (let line = 0; line < lines.count; line++) raise(need, along, 3 * line * (ROW_TRIALS + 1), sag);
    xs.push(stations[i]!, ...parts(need).slice(1).map(place));
  }
  return Float64Array.from([...xs, length]);
}

/** The lines along the board by which the rows are chosen: strands, and the edges of a notch on bottom and deck. */
function linesOf(surface: Surface, vs: Float64Array) {
  const sides = sidesOf(surface);
  // The last strand, v = 3, is the edge on the deck where there is no notch.
  const trials = surface.lengthwise(Float64Array.from({ length: TRIAL_STRANDS }, (_, i) => (3 * i) / TRIAL_STRANDS));
  const columns = surface.lengthwise(vs);
  const section = new Float64Array(3 * vs.length);
  const each = TRIAL_STRANDS + 2;
  return {
    count: sides.length * each,
    at(x: number, into: Float64Array) {
      sides.forEach((side, j) => {
        const first = 3 * j * each;
        pointsAcross(surface, side, x, trials.at(x, side), into, first);
        pointsAcross(surface, side, x, columns.at(x, side), section, 0);
        cutNotch(section, 0, vs.length, vs.indexOf(2), surface.outlines[side].inner(x));
        into.set(section.subarray(0, 3), first + 3 * (each - 2));
        into.set(section.subarray(-3), first + 3 * (each - 1));
      });
    },
  };
}

/** The sides that differ. */
export function sidesOf({ outlines, raised }: Surface): readonly SideCode[] {
  return outlines[0] === outlines[1] && !raised ? [1] : [0, 1];
}

/**
 * The board's length as half a turn: in it a round tip, where the half-width grows as the root of `x`, is as gentle as
 * the rest.
 */
export const toTurn = (x: number, length: number) => Math.acos(1 - (2 * x) / length);
export const fromTurn = (turn: number, length: number) => (length * (1 - Math.cos(turn))) / 2;

/**
 * Raises what each place of a line needs, in parts a step, to what it takes for chords to stay within `sag`. The line's
 * points are evenly spaced in their parameter and start at place `from` of `points`.
 */
function raise(need: Float64Array, points: Float64Array, from: number, sag: number): void {
  for (let i = 1, k = from + 3; i < need.length - 1; i++, k += 3) {
    const tx = points[k + 3]! - points[k - 3]!;
    const ty = points[k + 4]! - points[k - 2]!;
    const tz = points[k + 5]! - points[k - 1]!;
    const dx = points[k + 3]! - 2 * points[k]! + points[k - 3]!;
    const dy = points[k + 4]! - 2 * points[k + 1]! + points[k - 2]!;
    const dz = points[k + 5]! - 2 * points[k + 2]! + points[k - 1]!;
    const square = tx * tx + ty * ty + tz * tz;
    const share = square > 0 ? (dx * tx + dy * ty + dz * tz) / square : 0;
    const bend = Math.sqrt((dx - share * tx) ** 2 + (dy - share * ty) ** 2 + (dz - share * tz) ** 2);
    const parts = Math.sqrt(bend / (8 * sag));
    if (parts > need[i]!) need[i] = parts;
  }
}

/**
 * Shares of a stretch, rising from 0, at which parts begin that each take an equal part of what is needed; the ends
 * need nothing of their own, and a step what the needier of its ends does.
 */
function parts(need: Float64Array): number[] {
  const steps = need.length - 1;
  const rising = [0];
  for (let i = 0; i < steps; i++) rising.push(rising[i]! + Math.max(need[i]!, need[i + 1]!));
  const total = rising[steps]!;
  const count = Math.ceil(total);
  const shares = [0];
  for (let k = 1, i = 0; k < count; k++) {
    const wanted = (k * total) / count;
    while (rising[i + 1]! <= wanted) i++;
    shares.push((i + (wanted - rising[i]!) / (rising[i + 1]! - rising[i]!)) / steps);
  }
  return shares;
}
