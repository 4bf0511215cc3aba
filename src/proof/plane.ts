import {
  areaPathsD,
  differenceD,
  EndType,
  FillRule,
  inflatePathsD,
  JoinType,
  type PathD,
  type PathsD,
} from 'clipper2-ts';

/**
 * A corner of a published contour, mm; `bulge` as in DXF. Here and in all of the proof plane geometry is written anew
 * on purpose: what proves a plan shares none with `src/contour`, which made it.
 */
export interface Corner {
  readonly x: number;
  readonly y: number;
  readonly bulge?: number;
}

/** A point of a plane, mm. */
export type Pair = readonly [u: number, v: number];

/** Decimals of a millimetre that polygons are compared at. */
const DECIMALS = 3;
/** How far a straight line may cut off an arc, mm. */
const SAGITTA = 0.005;

/** A closed contour as straight lines whose corners lie on it, mm. */
export function flattened(contour: readonly Corner[]): Pair[] {
  return contour.flatMap((a, i): Pair[] => {
    if (!a.bulge) return [[a.x, a.y]];
    const b = contour[(i + 1) % contour.length]!;
    const turn = 4 * Math.atan(a.bulge);
    const chord = Math.hypot(b.x - a.x, b.y - a.y);
    const radius = chord / 2 / Math.sin(Math.abs(turn) / 2);
    const away = chord / 2 / Math.tan(turn / 2);
    const [cx, cy] = [(a.x + b.x) / 2 - (away * (b.y - a.y)) / chord, (a.y + b.y) / 2 + (away * (b.x - a.x)) / chord];
    const step = 2 * Math.acos(Math.max(0.5, 1 - SAGITTA / radius));
    const steps = Math.max(1, Math.ceil(Math.abs(turn) / step));
    const start = Math.atan2(a.y - cy, a.x - cx);
    return Array.from({ length: steps }, (_, k): Pair => {
      const angle = start + (turn * k) / steps;
      return [cx + radius * Math.cos(angle), cy + radius * Math.sin(angle)];
    });
  });
}

/**
 * A closed contour with each of its arcs drawn out to the corner that its two ends point at: what a saw leaves square.
 */
export function squaredOut(contour: readonly Corner[]): Pair[] {
  return contour.flatMap((a, i): Pair[] => {
    if (!a.bulge) return [[a.x, a.y]];
    const b = contour[(i + 1) % contour.length]!;
    const turn = 4 * Math.atan(a.bulge);
    const high = Math.tan(turn / 2) / 2;
    return [
      [a.x, a.y],
      [(a.x + b.x) / 2 + high * (b.y - a.y), (a.y + b.y) / 2 - high * (b.x - a.x)],
    ];
  });
}

/** The square of the shortest distance between a point and a stretch of a straight line, mm². */
function pointToLine(u: number, v: number, au: number, av: number, bu: number, bv: number): number {
  const du = bu - au;
  const dv = bv - av;
  const size = du * du + dv * dv;
  const share = size === 0 ? 0 : Math.min(1, Math.max(0, ((u - au) * du + (v - av) * dv) / size));
  return (u - au - share * du) ** 2 + (v - av - share * dv) ** 2;
}

/** Whether a point lies within a polygon: its winding number is not 0. */
export function liesWithin([u, v]: Pair, polygon: readonly Pair[]): boolean {
  let winding = 0;
  for (let i = 0; i < polygon.length; i++) {
    const [au, av] = polygon[i]!;
    const [bu, bv] = polygon[(i + 1) % polygon.length]!;
    if (av <= v === bv <= v) continue;
    const left = (bu - au) * (v - av) - (u - au) * (bv - av);
    if (bv > v && left > 0) winding++;
    if (bv <= v && left < 0) winding--;
  }
  return winding !== 0;
}

/**
 * Distance from a stretch of a straight line to the outline of a polygon, mm; negative, by how deep, where the stretch
 * lies within.
 */
export function lineToPolygon(a: Pair, b: Pair, polygon: readonly Pair[]): number {
  const [au, av] = a;
  const [bu, bv] = b;
  const side = (u: number, v: number) => (bu - au) * (v - av) - (bv - av) * (u - au);
  const [lowU, highU, lowV, highV] = [Math.min(au, bu), Math.max(au, bu), Math.min(av, bv), Math.max(av, bv)];
  let near = Infinity;
  for (let i = 0; i < polygon.length; i++) {
    const [pu, pv] = polygon[i]!;
    const [qu, qv] = polygon[(i + 1) % polygon.length]!;
    // What even the boxes around the two are further apart than the nearest so far is not looked at.
    const u = Math.max(0, Math.min(pu, qu) - highU, lowU - Math.max(pu, qu));
    const v = Math.max(0, Math.min(pv, qv) - highV, lowV - Math.max(pv, qv));
    if (u * u + v * v >= near) continue;
    near = Math.min(near, pointToLine(au, av, pu, pv, qu, qv), pointToLine(bu, bv, pu, pv, qu, qv));
    near = Math.min(near, pointToLine(pu, pv, au, av, bu, bv));
    if (side(pu, pv) * side(qu, qv) >= 0) continue;
    const across = (u: number, v: number) => (qu - pu) * (v - pv) - (qv - pv) * (u - pu);
    if (across(au, av) * across(bu, bv) < 0) return 0;
  }
  return liesWithin(a, polygon) ? -Math.sqrt(near) : Math.sqrt(near);
}

/** Distance between two polygons that do not lie within each other, mm; 0 where they meet. */
export function polygonsApart(one: readonly Pair[], other: readonly Pair[]): number {
  return Math.max(0, Math.min(...one.map((p, i) => lineToPolygon(p, one[(i + 1) % one.length]!, other))));
}

/**
 * Whether a polygon lies within another, and off its edges by so much, mm (within rounding of them where it is not
 * above 0). Quick; a no may be wrong.
 */
export function liesInside(inner: readonly Pair[], outer: readonly Pair[], by: number): boolean {
  if (by <= 0 && inner.length === outer.length && inner.every(([u, v], i) => u === outer[i]![0] && v === outer[i]![1]))
    return true;
  return by > 0 && inner.every((p, i) => -lineToPolygon(p, inner[(i + 1) % inner.length]!, outer) >= by);
}

/**
 * Area of what of one polygon lies outside another that is first moved outward by so much (inward where negative), mm².
 * Corners stay sharp.
 */
export function areaOutside(inner: readonly Pair[], outer: readonly Pair[], by: number): number {
  return area(difference([pathOf(inner)], moved([pathOf(outer)], by, JoinType.Miter)));
}

/** Area of what two polygons share, mm². */
export function sharedArea(one: readonly Pair[], other: readonly Pair[]): number {
  const whole = [pathOf(one)];
  return area(whole) - area(difference(whole, [pathOf(other)]));
}

/**
 * Area of what a round cutter does not reach of a pocket, mm², when it may leave `spare` mm everywhere: the pocket
 * drawn in by `spare`, less what a disc of the cutter's radius that stays within the pocket sweeps (morphological
 * opening: Serra 1982, "Image Analysis and Mathematical Morphology").
 */
export function beyondCutter(pocket: readonly Pair[], radius: number, spare: number): number {
  const whole = [pathOf(pocket)];
  const swept = moved(moved(whole, -radius, JoinType.Round), radius, JoinType.Round);
  return area(difference(moved(whole, -spare, JoinType.Miter), swept));
}

/** Twice what the library may round away along the edge of a polygon, mm². */
export function roundingOf(polygon: readonly Pair[]): number {
  const edge = polygon.reduce((sum, [u, v], i) => {
    const [u1, v1] = polygon[(i + 1) % polygon.length]!;
    return sum + Math.hypot(u1 - u, v1 - v);
  }, 0);
  return 2 * edge * 10 ** -DECIMALS;
}

function moved(paths: PathsD, by: number, join: JoinType): PathsD {
  return inflatePathsD(paths, by, join, EndType.Polygon, 4, DECIMALS, SAGITTA);
}

function difference(paths: PathsD, others: PathsD): PathsD {
  return differenceD(paths, others, FillRule.NonZero, DECIMALS);
}

function area(paths: PathsD): number {
  return Math.abs(areaPathsD(paths));
}

function pathOf(polygon: readonly Pair[]): PathD {
  return polygon.map(([x, y]) => ({ x, y }));
}
