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
import { perimeter } from '../../contour/perimeter.js';
import { straight } from '../../contour/straight.js';
import { shiftsWithin } from './shifts.js';
import type { Outline } from '../log/trackedBlock.js';

/** Outlines are compared on a grid this fine, decimals of a mm. */
const DECIMALS = 3;
/** What the grid may cut off along an edge, mm: so little that no corner can stand out by it. */
const GRID_ERROR = 0.002;
/** More than the grid is off, where straight lines alone tell what need not be tried, mm. */
const SLACK = 0.02;

/**
 * Whether `small` can be laid wholly inside `large` by shifting it (not by turning it: a block has a nose end and a
 * deck edge). The shifts at which the two outlines cross are the Minkowski sum of one with the mirror image of the
 * other (Lozano-Pérez, "Spatial planning: a configuration space approach", IEEE Trans. Computers C-32(2), 1983); what
 * is left inside it are the places to try, and each is proved by cutting `large` away from `small`.
 *
 * @param spare how far `small` may stand over `large` everywhere, mm
 */
export function fitsInside(small: Outline, large: Outline, spare: number): boolean {
  const inner = counterClockwise(small);
  const room = inflatePathsD([counterClockwise(large)], spare, JoinType.Miter, EndType.Polygon, 4, DECIMALS);
  const allowed = GRID_ERROR * perimeter(inner);
  const within = shiftsWithin(inner, room, SLACK);
  if (within.length === 0) return false;
  const isInside = ({ x, y }: { x: number; y: number }) => standsOver([inner], room, x, y) <= allowed;
  if (isInside(placesOn(within)[0]!)) return true;
  const mirrored = inner.map(({ x, y }) => ({ x: -x, y: -y }));
  return room
    .flatMap((edge) => Minkowski.sumD(mirrored, edge, true, DECIMALS))
    .flatMap(placesOn)
    .some(isInside);
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
  const path = straight(outline);
  return areaPathsD([path]) < 0 ? path.reverse() : path;
}
