import type { Point } from '../contour/point.js';
import type { ProfileShape } from '../job/job.js';

/** The long edges of a profile, each from the nose end to the tail end, mm, before its corners are eased. */
export interface Edges {
  readonly top: readonly Point[];
  readonly bottom: readonly Point[];
}

/** How high and how low a chamber may reach at rising `s`. */
export interface HeightBounds {
  readonly s: readonly number[];
  readonly top: readonly number[];
  readonly bottom: readonly number[];
}

/**
 * How far a straight edge may stray from the room's edge that it stands for, mm. Less than the allowance the room is
 * drawn with, so that the proof rarely has to correct.
 */
const STRAY = 0.04;

/**
 * The largest profile of a shape within the bounds; `square` may be shorter than the bounds, the others use all of it.
 */
export function edgesWithin(shape: ProfileShape, bounds: HeightBounds, corner: number): Edges {
  if (shape === 'follow') return followed(bounds, corner);
  if (shape === 'straight') {
    const from = bounds.s[0]!;
    const to = bounds.s[bounds.s.length - 1]!;
    const top = supportingLine(bounds.s, bounds.top, 1);
    const bottom = supportingLine(bounds.s, bounds.bottom, -1);
    return { top: [from, to].map((s): Point => [s, top(s)]), bottom: [from, to].map((s): Point => [s, bottom(s)]) };
  }
  return largestRectangle(bounds);
}

/** Area between the edges, mm². */
export function areaBetween({ top, bottom }: Edges): number {
  return areaUnder(top) - areaUnder(bottom);
}

function areaUnder(edge: readonly Point[]): number {
  let area = 0;
  for (let i = 1; i < edge.length; i++) area += ((edge[i]![1] + edge[i - 1]![1]) / 2) * (edge[i]![0] - edge[i - 1]![0]);
  return area;
}

/** The least height between the edges at any of their points, mm. */
export function leastHeight({ top, bottom }: Edges): number {
  let least = Infinity;
  for (const [s, z] of top) least = Math.min(least, z - heightAt(bottom, s));
  for (const [s, z] of bottom) least = Math.min(least, heightAt(top, s) - z);
  return least;
}

/** Height of an edge at `s`, straight between its points. */
export function heightAt(edge: readonly Point[], s: number): number {
  let i = 1;
  while (i < edge.length - 1 && edge[i]![0] < s) i++;
  const [s0, z0] = edge[i - 1]!;
  const [s1, z1] = edge[i]!;
  return s1 === s0 ? z0 : z0 + ((s - s0) / (s1 - s0)) * (z1 - z0);
}

/** The edges shortened to a stretch of `s`. */
export function crop({ top, bottom }: Edges, from: number, to: number): Edges {
  const cut = (edge: readonly Point[]): Point[] => [
    [from, heightAt(edge, from)],
    ...edge.filter(([s]) => s > from && s < to),
    [to, heightAt(edge, to)],
  ];
  return { top: cut(top), bottom: cut(bottom) };
}

/**
 * Edges that follow the skins: the bounds themselves with as few straight pieces as keep to it, none shorter than a
 * corner needs.
 */
function followed({ s, top, bottom }: HeightBounds, corner: number): Edges {
  const first = s[0]! + corner;
  const last = s[s.length - 1]! - corner;
  const kept = (values: readonly number[]) =>
    values.filter((_, i) => i === 0 || i === s.length - 1 || (s[i]! >= first && s[i]! <= last));
  const at = kept(s);
  return { top: fewest(at, kept(top)), bottom: fewest(at, kept(bottom)) };
}

/**
 * Leaves out points that lie within `STRAY` of the straight line between the kept ones.
 * Source: D. H. Douglas and T. K. Peucker, "Algorithms for the reduction of the number of points…", Cartographica 10
 * (1973).
 */
function fewest(s: readonly number[], z: readonly number[]): Point[] {
  const kept: Point[] = [[s[0]!, z[0]!]];
  /** Keeps what is needed after one point, to the end of a stretch and with it. */
  const keep = (from: number, to: number): void => {
    const slope = (z[to]! - z[from]!) / (s[to]! - s[from]!);
    let far = STRAY;
    let at = to;
    for (let i = from + 1; i < to; i++) {
      const off = Math.abs(z[i]! - z[from]! - (s[i]! - s[from]!) * slope);
      if (off <= far) continue;
      far = off;
      at = i;
    }
    if (at === to) kept.push([s[to]!, z[to]!]);
    else {
      keep(from, at);
      keep(at, to);
    }
  };
  keep(0, s.length - 1);
  return kept;
}

/**
 * The straight line under all values (`sign` 1) or over them (−1) with the most area on its far side: the side of the
 * convex hull that spans the middle.
 */
function supportingLine(s: readonly number[], z: readonly number[], sign: 1 | -1): (s: number) => number {
  const middle = (s[0]! + s[s.length - 1]!) / 2;
  const hull: number[] = [];
  for (let i = 0; i < s.length; i++) {
    while (hull.length >= 2) {
      const [a, b] = [hull[hull.length - 2]!, hull[hull.length - 1]!];
      const turn = (s[b]! - s[a]!) * (z[i]! - z[a]!) - (z[b]! - z[a]!) * (s[i]! - s[a]!);
      if (sign * turn > 0) break;
      hull.pop();
    }
    hull.push(i);
  }
  const k = Math.max(
    1,
    hull.findIndex((i) => s[i]! >= middle),
  );
  const [a, b] = [hull[k - 1]!, hull[k]!];
  const slope = (z[b]! - z[a]!) / (s[b]! - s[a]!);
  return (at) => z[a]! + slope * (at - s[a]!);
}

function largestRectangle({ s, top, bottom }: HeightBounds): Edges {
  let best = { area: -Infinity, from: s[0]!, to: s[s.length - 1]!, top: Math.min(...top), bottom: Math.max(...bottom) };
  for (let i = 0; i < s.length; i++) {
    let high = top[i]!;
    let low = bottom[i]!;
    for (let j = i + 1; j < s.length; j++) {
      high = Math.min(high, top[j]!);
      low = Math.max(low, bottom[j]!);
      const area = (s[j]! - s[i]!) * (high - low);
      if (area > best.area) best = { area, from: s[i]!, to: s[j]!, top: high, bottom: low };
    }
  }
  const { from, to } = best;
  return {
    top: [
      [from, best.top],
      [to, best.top],
    ],
    bottom: [
      [from, best.bottom],
      [to, best.bottom],
    ],
  };
}
