import { cutBy } from '../place/slice.js';
import type { ScanFault } from '../fault.js';
import type { Triangles } from '../triangles.js';
import { COSINES, RAYS, raysOf, SINES, type Frame } from './polar.js';
import { filledIn, localValue, localWeights } from './smooth.js';

/** A place of a half-section: from the centreline outward, and over the bottom on the centreline, mm. */
export interface SectionPoint {
  readonly y: number;
  readonly z: number;
}

/** What was taken off the mesh at one place along the board, mm. */
export interface FormStation {
  readonly x: number;
  /** Height of the bottom on the centreline, and thickness there. */
  readonly bottom: number;
  readonly thickness: number;
  /** From the keel over the widest point to the deck's middle; left and right. */
  readonly sections: readonly [left: readonly SectionPoint[], right: readonly SectionPoint[]];
  /** Half-widths. */
  readonly half: readonly [left: number, right: number];
}

/** How an end leaves the tip, by its half-widths. */
export type EndShape = 'round' | 'pointed' | { readonly square: readonly [left: number, right: number] };

/** The smooth form of a mesh that lies as a board lies. */
export interface Form {
  readonly length: number;
  readonly stations: readonly FormStation[];
  readonly nose: EndShape;
  readonly tail: EndShape;
  /**
   * How far the triangles lie from the smooth form, square to it, mm: the median, and what one place in a hundred
   * exceeds, of the places where both were met.
   */
  readonly off: { readonly usual: number; readonly most: number };
  /** Height of the lowest bottom on the centreline in the frame of the mesh, mm: stations count from it. */
  readonly lowest: number;
}

/** Stations, closer together at both ends. */
const STATIONS = 96;
/** Planes in which the mesh is looked at: apart along the board, and near the tips, mm. */
const APART = 6;
const APART_AT_TIPS = 1;
const TIPS = 45;
/** Nothing is looked at nearer to a tip than this, mm. */
const TIP = 1.5;
/** How far a parabola reaches to both sides, in distances between stations; at least, mm. */
const REACH = 2.2;
const LEAST_REACH = 9;
/** The same around the section, in rays, where the mesh is noisier than this, mm. */
const RAY_REACH = 3;
const NOISY = 0.04;

/**
 * Sections of a mesh at stations from nose to tail, smoothed along the board and around the section by local
 * parabolas.
 *
 * @param until where in `triangles` those end that were measured
 */
export function formOf(mesh: Triangles, until: number): Form | ScanFault {
  const length = lengthOf(mesh.positions);
  const planes = planesOf(length);
  const framed = frameOf(mesh, planes, length);
  if ('kind' in framed) return framed;
  const rays = raysOf(mesh, planes, framed, until);
  const xs = stationsOf(length, planes);
  const sizes = xs.map((x) => sizeAt(framed, planes, x));
  const around = xs.map((x) => {
    const weights = localWeights(planes, x, reachAt(x, length));
    return [0, 1].map((side) =>
      Array.from({ length: RAYS }, (_, ray) => localValue(weights, (i) => rays[(i * 2 + side) * RAYS + ray]!)),
    );
  });
  // What is nowhere met near a station is drawn on from the stations before and behind it.
  for (const side of [0, 1])
    for (let ray = 0; ray < RAYS; ray++) {
      const line = filledIn(around.map((each) => each[side]![ray]!));
      line.forEach((value, j) => (around[j]![side]![ray] = value));
    }
  const missing = around[0]!.flatMap((each) => each.filter(Number.isNaN)).length;
  if (missing > 0) return { kind: 'gap', from: 0, to: length };
  const off = offBy(rays, planes, framed, xs, around);
  if (off.usual > NOISY) for (const each of around) for (const side of [0, 1]) each[side] = smoothedAround(each[side]!);
  for (const each of around)
    for (const ray of [0, RAYS - 1]) {
      const mean = (each[0]![ray]! + each[1]![ray]!) / 2;
      each[0]![ray] = mean;
      each[1]![ray] = mean;
    }
  const stations = xs.map((x, j) => stationOf(x, around[j]!, sizes[j]!));
  const lowest = Math.min(...stations.map(({ bottom }) => bottom));
  return {
    length,
    stations: stations.map((each) => ({ ...each, bottom: each.bottom - lowest })),
    nose: endOf(framed, planes, 0),
    tail: endOf(framed, planes, length),
    off,
    lowest,
  };
}

function lengthOf(positions: Float64Array): number {
  let high = -Infinity;
  for (let k = 0; k < positions.length; k += 3) if (positions[k]! > high) high = positions[k]!;
  return high;
}

function planesOf(length: number): Float64Array {
  const xs: number[] = [];
  for (let x = TIP; x < TIPS; x += APART_AT_TIPS) xs.push(x);
  const count = Math.ceil((length - 2 * TIPS) / APART);
  for (let i = 0; i <= count; i++) xs.push(TIPS + ((length - 2 * TIPS) * i) / count);
  for (let x = TIPS - APART_AT_TIPS; x >= TIP; x -= APART_AT_TIPS) xs.push(length - x);
  return Float64Array.from(xs);
}

/** How far a parabola reaches to both sides, mm: in proportion to how far apart stations lie there. */
function reachAt(x: number, length: number): number {
  const share = Math.min(1, Math.max(0, x / length));
  return Math.max(LEAST_REACH, REACH * (Math.PI / STATIONS) * length * Math.sqrt(share * (1 - share)));
}

function stationsOf(length: number, planes: Float64Array): number[] {
  const xs = Array.from(
    { length: STATIONS },
    (_, i) => (length * (1 - Math.cos((Math.PI * (i + 0.5)) / STATIONS))) / 2,
  );
  return xs.filter((x) => x >= planes[0]! + 1 && x <= planes[planes.length - 1]! - 1);
}

/** Half-widths and heights on the centreline in every plane, smoothed by their neighbours. */
function frameOf(
  mesh: Triangles,
  planes: Float64Array,
  length: number,
): (Frame & { readonly halves: [Float64Array, Float64Array] }) | ScanFault {
  const right = new Float64Array(planes.length).fill(NaN);
  const left = new Float64Array(planes.length).fill(NaN);
  const top = new Float64Array(planes.length).fill(NaN);
  const bottom = new Float64Array(planes.length).fill(NaN);
  cutBy(mesh, planes, (plane, y0, z0, y1, z1) => {
    if (!(Math.max(y0, y1) <= right[plane]!)) right[plane] = Math.max(y0, y1);
    if (!(Math.min(y0, y1) >= left[plane]!)) left[plane] = Math.min(y0, y1);
    if (y0 < 0 === y1 < 0) return;
    const z = z0 + (y0 / (y0 - y1)) * (z1 - z0);
    if (!(z <= top[plane]!)) top[plane] = z;
    if (!(z >= bottom[plane]!)) bottom[plane] = z;
  });
  const empty = planes.findIndex((_, i) => !(top[i]! > bottom[i]!));
  if (empty >= 0) {
    const x = planes[empty]!;
    // Off the centreline there is something, on it nothing: a notch.
    if (left[empty]! < 0 && right[empty]! > 0) return { kind: 'notch', x };
    return { kind: 'gap', from: x, to: planes.findLast((_, i) => !(top[i]! > bottom[i]!))! };
  }
  const half = planes.map((_, i) => Math.max(right[i]!, -left[i]!));
  // As smooth as the sections themselves, by which it is made good again.
  const near = planes.map((x) => reachAt(x, length));
  const weights = Array.from(planes, (x, i) => localWeights(planes, x, near[i]!));
  const evened = (values: Float64Array) => planes.map((_, i) => localValue(weights[i]!, (k) => values[k]!));
  return {
    half: evened(half),
    thick: evened(planes.map((_, i) => (top[i]! - bottom[i]!) / 2)),
    middle: evened(planes.map((_, i) => (top[i]! + bottom[i]!) / 2)),
    halves: [left.map((y) => -y), right],
  };
}

interface Size {
  readonly half: number;
  readonly thick: number;
  readonly middle: number;
}

function sizeAt({ half, thick, middle }: Frame, planes: Float64Array, x: number): Size {
  let i = planes.findIndex((each) => each > x) - 1;
  if (i < 0) i = planes.length - 2;
  const share = (x - planes[i]!) / (planes[i + 1]! - planes[i]!);
  const at = (values: Float64Array) => values[i]! + share * (values[i + 1]! - values[i]!);
  return { half: at(half), thick: at(thick), middle: at(middle) };
}

function smoothedAround(reach: readonly number[]): number[] {
  // Across the centreline the section goes on as it came.
  const mirrored = (i: number) => reach[i < 0 ? -i : i > RAYS - 1 ? 2 * (RAYS - 1) - i : i]!;
  const xs = Float64Array.from({ length: 4 * RAY_REACH + 1 }, (_, i) => i);
  const weights = localWeights(xs, 2 * RAY_REACH, RAY_REACH);
  return reach.map((_, ray) => localValue(weights, (i) => mirrored(ray + i - 2 * RAY_REACH)));
}

function stationOf(x: number, around: readonly (readonly number[])[], { half, thick, middle }: Size): FormStation {
  const base = middle - thick * around[0]![0]!;
  const sections = around.map((reach) => {
    const points = reach.map((far, ray) => ({
      y: half * far * SINES[ray]!,
      z: middle - thick * far * COSINES[ray]! - base,
    }));
    return risingTo(withApex(points));
  });
  const widest = (points: readonly SectionPoint[]) => Math.max(...points.map(({ y }) => y));
  return {
    x,
    bottom: base,
    thickness: thick * (around[0]![0]! + around[0]![RAYS - 1]!),
    sections: [sections[0]!, sections[1]!],
    half: [widest(sections[0]!), widest(sections[1]!)],
  };
}

/** The widest point exactly: of the parabola through the widest and its neighbours, in the place of the widest. */
function withApex(points: SectionPoint[]): SectionPoint[] {
  let widest = 1;
  points.forEach(({ y }, i) => {
    if (y > points[widest]!.y) widest = i;
  });
  const [a, b, c] = [points[widest - 1], points[widest]!, points[widest + 1]];
  if (!a || !c) return points;
  const bend = a.y - 2 * b.y + c.y;
  if (!(bend < 0)) return points;
  const by = (a.y - c.y) / (2 * bend);
  const y = b.y - ((a.y - c.y) * by) / 4;
  const z = b.z + (by * (c.z - a.z)) / 2 + (by * by * (a.z - 2 * b.z + c.z)) / 2;
  return points.map((point, i) => (i === widest ? { y, z } : point));
}

/** The same without points that step back toward the centreline on the way to the widest, or outward after it. */
function risingTo(points: readonly SectionPoint[]): SectionPoint[] {
  let widest = 0;
  points.forEach(({ y }, i) => {
    if (y > points[widest]!.y) widest = i;
  });
  const least = points[widest]!.y * LEAST_STEP;
  const kept: SectionPoint[] = [];
  points.forEach((point, i) => {
    const last = kept.at(-1);
    if (i === 0 || i === widest || i === points.length - 1) kept.push(point);
    else if (
      i < widest
        ? point.y > last!.y + least && point.y < points[widest]!.y - least
        : point.y < last!.y - least && point.y > least
    )
      kept.push(point);
  });
  return kept;
}

/** Points of a section lie at least so far apart across, as a share of its half-width. */
const LEAST_STEP = 1e-5;

/** How far rays lie from the smooth form, square to it, mm. */
function offBy(
  rays: Float64Array,
  planes: Float64Array,
  frame: Frame,
  xs: readonly number[],
  around: readonly (readonly (readonly number[])[])[],
): Form['off'] {
  const offs: number[] = [];
  for (let plane = 0, j = 0; plane < planes.length; plane++) {
    const x = planes[plane]!;
    if (x < xs[0]! || x > xs[xs.length - 1]!) continue;
    while (j < xs.length - 2 && xs[j + 1]! < x) j++;
    const share = (x - xs[j]!) / (xs[j + 1]! - xs[j]!);
    for (let side = 0; side < 2; side++)
      for (let ray = 1; ray < RAYS - 1; ray++) {
        const met = rays[(plane * 2 + side) * RAYS + ray]!;
        if (Number.isNaN(met)) continue;
        const [a, b] = [around[j]![side]!, around[j + 1]![side]!];
        const smooth = a[ray]! + share * (b[ray]! - a[ray]!);
        // Square to the section: its direction here, at true size.
        const far = (i: number) => a[i]! + share * (b[i]! - a[i]!);
        const dy = frame.half[plane]! * (far(ray + 1) * SINES[ray + 1]! - far(ray - 1) * SINES[ray - 1]!);
        const dz = -frame.thick[plane]! * (far(ray + 1) * COSINES[ray + 1]! - far(ray - 1) * COSINES[ray - 1]!);
        const oy = frame.half[plane]! * (met - smooth) * SINES[ray]!;
        const oz = -frame.thick[plane]! * (met - smooth) * COSINES[ray]!;
        offs.push(Math.abs(oy * dz - oz * dy) / (Math.hypot(dy, dz) || 1));
      }
  }
  const sorted = Float64Array.from(offs).sort();
  return { usual: sorted[sorted.length >> 1] ?? 0, most: sorted[Math.floor(0.99 * sorted.length)] ?? 0 };
}

/** The shape of an end, by how fast it widens: with the root of the distance, in proportion to it, or at once. */
function endOf(
  { halves }: { readonly halves: readonly [Float64Array, Float64Array] },
  planes: Float64Array,
  tip: number,
): EndShape {
  const at = (side: 0 | 1, away: number) => {
    let best = 0;
    planes.forEach((x, i) => {
      if (Math.abs(Math.abs(x - tip) - away) < Math.abs(Math.abs(planes[best]! - tip) - away)) best = i;
    });
    return halves[side][best]!;
  };
  const near = at(0, NEAR_TIP) + at(1, NEAR_TIP);
  const far = at(0, FAR_TIP) + at(1, FAR_TIP);
  if (near > SQUARE * far) return { square: [at(0, TIP), at(1, TIP)] };
  // With the root of the distance it would be a half, in proportion a quarter.
  return near > 0.37 * far ? 'round' : 'pointed';
}

const NEAR_TIP = 2.5;
const FAR_TIP = 10.5;
/** Wider than this share of what it is further in, right at the tip, an end is cut straight across. */
const SQUARE = 0.8;
