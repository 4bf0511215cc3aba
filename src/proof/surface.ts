import type { Mesh } from '../board/mesh.js';

type Point = readonly [x: number, y: number, z: number];

/**
 * A mesh made ready to be asked for heights and distances: which triangles reach into each of even stretches along the
 * board.
 *
 * Layout: `order` holds where in `triangles` each begins, stretch after stretch; stretch i takes `starts[i]` to
 * `starts[i + 1]`.
 */
export interface SortedMesh {
  readonly mesh: Pick<Mesh, 'positions' | 'triangles'>;
  readonly order: Uint32Array;
  readonly starts: Uint32Array;
}

/** Along the board, mm. */
const STRETCH = 25;

/** Sorts a mesh's triangles by the stretches they reach into. */
export function sortedMesh(mesh: SortedMesh['mesh']): SortedMesh {
  const { positions, triangles } = mesh;
  const count = triangles.length / 3;
  const first = new Uint32Array(count);
  const last = new Uint32Array(count);
  let stretches = 0;
  for (let i = 0; i < count; i++) {
    const a = positions[3 * triangles[3 * i]!]!;
    const b = positions[3 * triangles[3 * i + 1]!]!;
    const c = positions[3 * triangles[3 * i + 2]!]!;
    first[i] = Math.max(0, Math.floor(Math.min(a, b, c) / STRETCH));
    last[i] = Math.max(0, Math.floor(Math.max(a, b, c) / STRETCH));
    stretches = Math.max(stretches, last[i]! + 1);
  }
  const starts = new Uint32Array(stretches + 2);
  for (let i = 0; i < count; i++) for (let at = first[i]!; at <= last[i]!; at++) starts[at + 2]!++;
  for (let at = 2; at < starts.length; at++) starts[at]! += starts[at - 1]!;
  const order = new Uint32Array(starts[stretches + 1]!);
  for (let i = 0; i < count; i++) for (let at = first[i]!; at <= last[i]!; at++) order[starts[at + 1]!++] = 3 * i;
  return { mesh, order, starts };
}

/** Where in `order` the triangles begin and end that reach into a stretch of the board, mm. */
function range({ starts }: SortedMesh, from: number, to: number): [number, number] {
  const stretch = (x: number) => Math.min(starts.length - 1, Math.max(0, Math.floor(x / STRETCH)));
  return [starts[stretch(from)]!, starts[Math.min(starts.length - 1, stretch(to) + 1)]!];
}

/** Heights of the highest and the lowest point of the surface over a place in plan, mm; undefined off the board. */
export function heightsOver(surface: SortedMesh, x: number, y: number): { high: number; low: number } | undefined {
  let high = -Infinity;
  let low = Infinity;
  const [start, end] = range(surface, x, x);
  for (let i = start; i < end; i++) {
    const [a, b, c] = cornersOf(surface, surface.order[i]!);
    const whole = (b[0] - a[0]) * (c[1] - a[1]) - (c[0] - a[0]) * (b[1] - a[1]);
    if (whole === 0) continue;
    const toB = ((x - a[0]) * (c[1] - a[1]) - (c[0] - a[0]) * (y - a[1])) / whole;
    const toC = ((b[0] - a[0]) * (y - a[1]) - (x - a[0]) * (b[1] - a[1])) / whole;
    if (toB < -EDGE || toC < -EDGE || toB + toC > 1 + EDGE) continue;
    const z = a[2] + toB * (b[2] - a[2]) + toC * (c[2] - a[2]);
    high = Math.max(high, z);
    low = Math.min(low, z);
  }
  return high >= low ? { high, low } : undefined;
}

/** A share of a triangle's side: a place on its edge belongs to it. */
const EDGE = 1e-9;

/** The shortest distance from any of some points, close together, to the surface, mm; `look` where it is no less. */
export function nearestTo(surface: SortedMesh, points: readonly Point[], look: number): number {
  const { positions, triangles } = surface.mesh;
  const low = [0, 1, 2].map((axis) => Math.min(...points.map((point) => point[axis]!)));
  const high = [0, 1, 2].map((axis) => Math.max(...points.map((point) => point[axis]!)));
  let best = look;
  const isFar = (t: number, axis: number) => {
    const a = positions[3 * triangles[t]! + axis]!;
    const b = positions[3 * triangles[t + 1]! + axis]!;
    const c = positions[3 * triangles[t + 2]! + axis]!;
    return Math.min(a, b, c) > high[axis]! + best || Math.max(a, b, c) < low[axis]! - best;
  };
  const [start, end] = range(surface, low[0]! - look, high[0]! + look);
  for (let i = start; i < end; i++) {
    const t = surface.order[i]!;
    if (isFar(t, 0) || isFar(t, 1) || isFar(t, 2)) continue;
    const [a, b, c] = cornersOf(surface, t);
    for (const point of points) best = Math.min(best, pointToTriangle(point, a, b, c));
  }
  return best;
}

function cornersOf({ mesh: { positions, triangles } }: SortedMesh, t: number): [Point, Point, Point] {
  const corner = (i: number): Point => {
    const at = 3 * triangles[t + i]!;
    return [positions[at]!, positions[at + 1]!, positions[at + 2]!];
  };
  return [corner(0), corner(1), corner(2)];
}

/** The foot of the point on the triangle's plane where it falls within, else the nearest point of its three sides. */
function pointToTriangle(p: Point, a: Point, b: Point, c: Point): number {
  const n = cross(minus(b, a), minus(c, a));
  const size = Math.hypot(...n);
  const within = ([from, to]: readonly [Point, Point]) => dot(cross(minus(to, from), minus(p, from)), n) >= 0;
  const sides = [
    [a, b],
    [b, c],
    [c, a],
  ] as const;
  if (size > 0 && sides.every(within)) return Math.abs(dot(minus(p, a), n)) / size;
  return Math.min(...sides.map(([from, to]) => pointToSide(p, from, to)));
}

function pointToSide(p: Point, a: Point, b: Point): number {
  const d = minus(b, a);
  const size = dot(d, d);
  const share = size === 0 ? 0 : Math.min(1, Math.max(0, dot(minus(p, a), d) / size));
  return Math.hypot(p[0] - a[0] - share * d[0], p[1] - a[1] - share * d[1], p[2] - a[2] - share * d[2]);
}

function minus(a: Point, b: Point): Point {
  return [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
}

function dot(a: Point, b: Point): number {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

function cross(a: Point, b: Point): Point {
  return [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
}
