import {
  areaPathsD,
  differenceD,
  EndType,
  FillRule,
  inflatePathsD,
  JoinType,
  Minkowski,
  translatePathsD,
} from 'clipper2-ts';
import type { PathD, PathsD } from 'clipper2-ts';
import type { Outline } from './trackedBlock.js';

/** Outlines are compared on a grid this fine, decimals of a mm. */
const DECIMALS = 3;
/** What the grid may cut off along an edge, mm. */
const GRID_ERROR = 0.01;

/**
 * Whether `small` can be laid wholly inside `large` by shifting it (not by turning it: a block has a nose end and a deck edge).
 * The shifts at which the two outlines cross are the Minkowski sum of one with the mirror image of the other (Lozano-Pérez,
 * "Spatial planning: a configuration space approach", IEEE Trans. Computers C-32(2), 1983); what is left inside it are the places
 * to try, and each is proved by cutting `large` away from `small`.
 *
 * @param spare how far `small` may stand over `large` everywhere, mm
 */
export function fitsInside(small: Outline, large: Outline, spare: number): boolean {
  const inner = counterClockwise(small);
  const room = inflatePathsD([counterClockwise(large)], spare, JoinType.Miter, EndType.Polygon, 4, DECIMALS);
  const perimeter = inner.reduce(
    (sum, { x, y }, i) => sum + Math.hypot(x - inner.at(i - 1)!.x, y - inner.at(i - 1)!.y),
    0,
  );
  const allowed = GRID_ERROR * perimeter;
  const [needs, has] = [boxOf(inner), boxOf(room.flat())];
  if (needs.length > has.length + GRID_ERROR || needs.height > has.height + GRID_ERROR) return false;
  if (standsOver([inner], room, has.s - needs.s, has.z - needs.z) <= allowed) return true;
  const mirrored = inner.map(({ x, y }) => ({ x: -x, y: -y }));
  return room
    .flatMap((edge) => Minkowski.sumD(mirrored, edge, true, DECIMALS))
    .flatMap(placesOn)
    .some(({ x, y }) => standsOver([inner], room, x, y) <= allowed);
}

/** Middle and sides of the smallest box around these points. */
function boxOf(path: PathD): { s: number; z: number; length: number; height: number } {
  const [xs, ys] = [path.map(({ x }) => x), path.map(({ y }) => y)];
  const [s0, s1, z0, z1] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  return { s: (s0 + s1) / 2, z: (z0 + z1) / 2, length: s1 - s0, height: z1 - z0 };
}

/** Area of the shifted `inner` outside `room`, mm². */
function standsOver(inner: PathsD, room: PathsD, dx: number, dy: number): number {
  return Math.abs(areaPathsD(differenceD(translatePathsD(inner, dx, dy), room, FillRule.NonZero, DECIMALS)));
}

/** The corners of a region of shifts and the middle of them. */
function placesOn(region: PathD): PathD {
  const middle = {
    x: region.reduce((sum, { x }) => sum + x, 0) / region.length,
    y: region.reduce((sum, { y }) => sum + y, 0) / region.length,
  };
  return [middle, ...region];
}

function counterClockwise(outline: Outline): PathD {
  const path = outline.map(([x, y]) => ({ x, y }));
  return areaPathsD([path]) < 0 ? path.reverse() : path;
}
