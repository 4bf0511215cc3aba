import type { Point } from '../contour/point.js';
import { sharpCorners } from '../contour/sharp.js';
import { spanAt } from '../contour/span.js';
import { turned } from '../contour/turned.js';
import { momentsOf } from '../contour/area.js';
import type { Vertex } from '../contour/vertex.js';

/**
 * A chamber as guides see it: turned so that its middle line lies level, and cut by upright lines. `top` and `bottom`
 * stand at rising `u`, and are straight between; `u`, `v` are measured from the chamber's centre of area.
 */
export interface Levelled {
  readonly centre: Point;
  readonly tilt: number;
  readonly u: readonly number[];
  readonly top: readonly number[];
  readonly bottom: readonly number[];
}

/** Guides are turned by whole tenths of a degree, radians. */
const TURN = Math.PI / 1800;
/** Upright lines stand at most so far apart, mm. */
const STEP = 1;

export function levelled(contour: readonly Vertex[]): Levelled {
  const { x, y } = momentsOf(contour);
  const corners = sharpCorners(contour);
  const tilt = Math.round(slopeOf(corners) / TURN) * TURN;
  const level = corners.map(([a, b]) => turned([a - x, b - y], -tilt));
  const ends = level.map(([u]) => u);
  const [from, to] = [Math.min(...ends), Math.max(...ends)];
  const places = new Set(ends);
  for (let u = from; u < to; u += STEP) places.add(u);
  const rows = [...places].sort((a, b) => a - b).map((u) => ({ u, ...cutAt(level, u) }));
  return {
    centre: [x, y],
    tilt,
    u: rows.map((row) => row.u),
    top: rows.map((row) => row.top),
    bottom: rows.map((row) => row.bottom),
  };
}

/**
 * Slope of the chamber's middle line between its quarter points, as an angle: clear of ends that do not stand upright.
 */
function slopeOf(corners: readonly Point[]): number {
  const s = corners.map(([each]) => each);
  const [from, to] = [Math.min(...s), Math.max(...s)];
  const inset = (to - from) / 4;
  const middle = (at: number) => {
    const { top, bottom } = cutAt(corners, at);
    return (top + bottom) / 2;
  };
  return Math.atan2(middle(to - inset) - middle(from + inset), to - from - 2 * inset);
}

/** Highest and lowest crossing of an upright line; not-a-number where it crosses more than twice. */
function cutAt(corners: readonly Point[], u: number): { top: number; bottom: number } {
  const through = corners.filter(([u0], i) => u0 <= u !== corners[(i + 1) % corners.length]![0] <= u).length;
  const [bottom, top] = through > 2 ? [NaN, NaN] : spanAt(corners, u)!;
  return { top, bottom };
}

/**
 * How far a guide that is set to whole steps of a rule, along the face and up from the bottom line, may stand off its
 * middle, along and across its length, mm.
 */
export function settingSlack({ tilt }: Levelled, step: number): { readonly u: number; readonly v: number } {
  const half = step / 2;
  return { u: half * (1 / Math.cos(tilt) + Math.abs(Math.sin(tilt))), v: half * Math.cos(tilt) };
}

/**
 * The longest run between upright lines in which a level rectangle of this height fits, and where it may lie, mm;
 * undefined when it fits nowhere.
 */
export function longestRun(
  { u, top, bottom }: Levelled,
  height: number,
): { from: number; to: number; low: number; high: number } | undefined {
  let best: { from: number; to: number; low: number; high: number } | undefined;
  // Lowest top and highest bottom of the window, each as a queue of places that may still become it.
  const tops: number[] = [];
  const bottoms: number[] = [];
  let start = 0;
  for (let i = 0; i < u.length; i++) {
    if (Number.isNaN(top[i]!)) {
      tops.length = bottoms.length = 0;
      start = i + 1;
      continue;
    }
    while (tops.length > 0 && top[tops[tops.length - 1]!]! >= top[i]!) tops.pop();
    while (bottoms.length > 0 && bottom[bottoms[bottoms.length - 1]!]! <= bottom[i]!) bottoms.pop();
    tops.push(i);
    bottoms.push(i);
    while (start < i && top[tops[0]!]! - bottom[bottoms[0]!]! < height) {
      start++;
      if (tops[0]! < start) tops.shift();
      if (bottoms[0]! < start) bottoms.shift();
    }
    const high = top[tops[0]!]!;
    const low = bottom[bottoms[0]!]!;
    if (high - low < height) continue;
    if (u[i]! - u[start]! > (best ? best.to - best.from : 0)) best = { from: u[start]!, to: u[i]!, low, high };
  }
  return best;
}
