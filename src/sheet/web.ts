import type { Chamber } from '../chamber/chamber.js';
import { stretchOf } from '../chamber/stretch.js';
import type { Dot } from '../dot/dot.js';
import { printAs } from '../length/rounded.js';
import type { Units } from '../length/units.js';
import { sharpCorners } from '../rout/opening.js';
import type { Bench } from './bench.js';
import type { Shape } from './drawing.js';
import { heightFitting } from './lettering.js';
import { polygon, text, type Point } from './primitives.js';

/** A web is hatched where it is no wider than this, mm: a longer solid is a place of its own. */
const WIDEST = 80;

/** The solid between two neighbours, hatched from end to end of the chambers beside it, with its width written on it. */
export function webMark(before: Chamber, after: Chamber, bench: Bench, units: Units, glue: readonly Dot[]): Shape[] {
  const from = stretchOf(before.profile).to;
  const to = stretchOf(after.profile).from;
  const width = to - from;
  const a = endOf(before, 1);
  const b = endOf(after, -1);
  if (!a || !b || width <= 0 || width > WIDEST) return [];
  const corners = [a[0], b[0], b[1], a[1]];
  const words = printAs('there', width, units);
  const room = freeOf(glue, { from, to, low: Math.max(a[0][1], b[0][1]) + 2, high: Math.min(a[1][1], b[1][1]) - 2 });
  const tall = room.high - room.low;
  const level = heightFitting(words, { width: width - 2, height: tall }, 5, 2.5);
  const upright = heightFitting(words, { width: tall, height: width - 4 }, 5, 2.5);
  const at = bench.point((from + to) / 2, (room.low + room.high) / 2);
  return [
    polygon(
      'web',
      corners.map(([s, z]) => bench.point(s, z)),
      'light',
    ),
    ...(level ? [text(words, at, level)] : upright ? [text(words, at, upright, 'centre', { angleInDegrees: 90 })] : []),
  ];
}

/** The lower and the upper corner of a chamber's end toward the tail (1) or the nose (-1), as they were before easing, `[s, z]`. It may lean. */
function endOf({ contour }: Chamber, toward: 1 | -1): [Point, Point] | undefined {
  const [a, b] = sharpCorners(contour).sort((p, q) => toward * (q[0] - p[0]));
  if (!a || !b) return undefined;
  return a[1] <= b[1] ? [a, b] : [b, a];
}

/** What of a web's height is free of glue: all of it, or the larger part over or under a dot. */
function freeOf(
  glue: readonly Dot[],
  web: { from: number; to: number; low: number; high: number },
): { low: number; high: number } {
  const dot = glue.find(({ s, diameter }) => s + diameter / 2 > web.from && s - diameter / 2 < web.to);
  if (!dot) return web;
  const [under, over] = [dot.z - dot.diameter / 2 - 1, dot.z + dot.diameter / 2 + 1];
  return web.high - over >= under - web.low ? { low: over, high: web.high } : { low: web.low, high: under };
}
