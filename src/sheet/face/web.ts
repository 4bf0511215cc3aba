import type { Point } from '../../contour/point.js';
import type { Chamber } from '../../chamber/chamber.js';
import { stretchOf } from '../../chamber/stretch.js';
import { chamberEnds, type ChamberEnds } from './chamberEnds.js';
import { printAs } from '../../length/rounded.js';
import type { Units } from '../../length/units.js';
import type { FaceOnBench } from './faceOnBench.js';
import type { Caption, Shape } from '../drawing.js';
import { polygon, text } from '../primitives.js';

/** A web is hatched where it is no wider than this, mm: a longer solid is a place of its own. */
const WIDEST = 80;

/** The solid between two neighbours, hatched from end to end of the chambers beside it. */
export function webMark(before: Chamber, after: Chamber, bench: FaceOnBench): Shape[] {
  const web = webBetween(before, after);
  if (!web) return [];
  const corners = [web.a[0], web.b[0], web.b[1], web.a[1]];
  return [
    polygon(
      'web',
      corners.map(([s, z]) => bench.point(s, z)),
      'light',
    ),
  ];
}

/** How wide a web is, written on it: level or upright, over or under a dot, where there is room. */
export function webWidth(before: Chamber, after: Chamber, bench: FaceOnBench, units: Units): Caption[] {
  const web = webBetween(before, after);
  if (!web) return [];
  const words = printAs('there', web.to - web.from, units);
  const [low, high] = [Math.max(web.a[0][1], web.b[0][1]), Math.min(web.a[1][1], web.b[1][1])];
  const places = [5, 3.5, 2.5].flatMap((height) =>
    [0.5, 0.75, 0.25, 0.9, 0.1].flatMap((share) => {
      const at = bench.point((web.from + web.to) / 2, low + share * (high - low));
      return [[text(words, at, height)], [text(words, at, height, 'centre', { angleInDegrees: 90 })]];
    }),
  );
  return [{ places, optional: true }];
}

/** Where a web begins and ends, and the chambers' ends there; undefined for a solid that is a place of its own. */
function webBetween(before: Chamber, after: Chamber) {
  const from = stretchOf(before.profile).to;
  const to = stretchOf(after.profile).from;
  if (to <= from || to - from > WIDEST) return undefined;
  const [a, b] = [chamberEnds(before.contour), chamberEnds(after.contour)];
  const end = (i: number, { lower, upper }: ChamberEnds): [Point, Point] => [lower.at(i)!, upper.at(i)!];
  return { from, to, a: end(-1, a), b: end(0, b) };
}
