import { z } from 'zod';
import type { Point } from '../../contour/point.js';
import { printLength } from '../../length/length.js';
import { MM_PER_INCH, type Units } from '../../length/units.js';
import type { Say } from '../mistake/say.js';
import type { Quantities } from '../quantities.js';
import type { FinOutlineSpec } from '../spec/fin.js';
import type { FinSpec } from '../spec/finish.js';
import { closedPath } from './closed-path.js';

/** An edge that is not given is straight. */
const STRAIGHT = 0.5;
/** How far a drawing may lie from the base and the depth that are written beside it, mm. */
const SAME = 0.5;
/** Points of a drawing nearer than this to its base or tip line lie on it, mm. */
const ON_LINE = 0.05;

export function finEdgesSchema(q: Quantities) {
  const place = (what: string) => q.length(what, { least: -800, most: 1600, because: 'fins lie in that range' });
  const points = (which: string) =>
    z
      .array(z.tuple([place('behind the front end of the base'), place('over the base')]))
      .min(1, 'no points are written|at least one point between base and tip')
      .max(400, 'more than 400 points|at most 400')
      .meta({ description: `points of the ${which} edge between base and tip, from the base up` })
      .optional();
  const fullness = (which: string) =>
    q
      .share(`or how full the ${which} edge is: 50 % straight, 71 % an ellipse, below 50 % hollow`, {
        least: 0.1,
        most: 0.95,
        because: 'a fuller or hollower edge is a corner',
      })
      .optional();
  return z
    .strictObject({
      rake: q
        .length('how far the middle of the tip lies behind the middle of the base', {
          least: -500,
          most: 800,
          because: 'fins lie in that range',
        })
        .optional(),
      leadingPoints: points('leading'),
      leading: fullness('leading'),
      trailingPoints: points('trailing'),
      trailing: fullness('trailing'),
      path: z
        .string()
        .meta({
          description:
            "or the whole outline as the data of an SVG path, numbers in the file's units, x from the front end of its base toward the tail, y up from the base",
        })
        .optional(),
    })
    .meta({ description: 'its outline beside base, tip and depth: how far it is raked and how full its edges are' });
}

type FinEdgesFile = z.infer<ReturnType<typeof finEdgesSchema>>;

/** The outline, and the length of the tip: a drawing has its own. */
interface Outlined {
  readonly outline: FinOutlineSpec;
  readonly tip: number;
}

/** @param tip as the fin gives it; half of the base, or as it is drawn, where it does not */
export function toFinOutline(
  file: FinEdgesFile,
  fin: Pick<FinSpec, 'base' | 'depth'>,
  tip: number | undefined,
  units: Units,
  say: Say,
): Outlined {
  if (file.path !== undefined) {
    const other = (Object.keys(file) as (keyof FinEdgesFile)[]).find(
      (key) => key !== 'path' && file[key] !== undefined,
    );
    if (other) say.error([other], 'the outline is drawn by a path and measured too', 'keep one of them');
    return drawnOutline(file.path, fin, tip, units, say.at('path'));
  }
  const edge = (which: 'leading' | 'trailing'): number | readonly Point[] => {
    const points = file[`${which}Points`];
    if (points && file[which] !== undefined)
      say.error([which], 'the edge is given by its points and by its fullness', 'keep one of them');
    if (points) checkRising(points, fin.depth, units, say.at(`${which}Points`));
    return points ?? file[which] ?? STRAIGHT;
  };
  const outline = { rake: file.rake ?? 0, leading: edge('leading'), trailing: edge('trailing') };
  return { outline, tip: tip ?? fin.base / 2 };
}

function checkRising(points: readonly Point[], depth: number, units: Units, say: Say): void {
  points.forEach(([, y], i) => {
    const before = i === 0 ? 0 : points[i - 1]![1];
    if (y <= before || y >= depth) {
      say.error(
        [i],
        `this point lies ${printLength(y, units)} over the base`,
        `from the base up, more than ${printLength(before, units)} and less than the depth of ${printLength(depth, units)}`,
      );
    }
  });
}

/** The edges of a fin that was drawn as one closed outline: parted at its base line and its tip. */
function drawnOutline(
  path: string,
  fin: Pick<FinSpec, 'base' | 'depth'>,
  tip: number | undefined,
  units: Units,
  say: Say,
): Outlined {
  const length = (mm: number) => printLength(mm, units);
  const wrong = (what: string, remedy: string): Outlined => {
    say.error([], what, remedy);
    return { outline: { rake: 0, leading: STRAIGHT, trailing: STRAIGHT }, tip: NaN };
  };
  const points = closedPath(path, units === 'in' ? MM_PER_INCH : 1, say);
  if (points.length === 0) return { outline: { rake: 0, leading: STRAIGHT, trailing: STRAIGHT }, tip: NaN };
  const ends = (isOn: (y: number) => boolean) => {
    const along = points.flatMap(([x, y], i) => (isOn(y) ? [{ x, i }] : [])).sort((a, b) => a.x - b.x);
    return [along[0], along.at(-1)] as const;
  };
  const top = Math.max(...points.map(([, y]) => y));
  const [front, back] = ends((y) => Math.abs(y) <= ON_LINE);
  const [tipFront, tipBack] = ends((y) => y >= top - ON_LINE);
  const lowest = Math.min(...points.map(([, y]) => y));
  if (lowest < -ON_LINE || !front || !back || front === back || Math.abs(front.x) > SAME)
    return wrong('its base does not lie along y = 0 from x = 0', 'the front end of its base at 0 0, its tip up');
  if (Math.abs(back.x - front.x - fin.base) > SAME || Math.abs(top - fin.depth) > SAME) {
    return wrong(
      `the drawing has a base of ${length(back.x - front.x)} and a depth of ${length(top)}`,
      'the same as base: and depth: of the fin, or a drawing of that size',
    );
  }
  const drawnTip = tipBack!.x - tipFront!.x;
  if (tip !== undefined && Math.abs(drawnTip - tip) > SAME)
    return wrong(`the drawing is ${length(drawnTip)} long at its tip`, 'leave out tip: of the fin');
  const count = points.length;
  const between = (from: number, to: number, step: 1 | -1): Point[] => {
    const found: Point[] = [];
    for (let i = (from + step + count) % count; i !== to; i = (i + step + count) % count) found.push(points[i]!);
    return found;
  };
  // The base is the one side that goes straight from its front end to its back end.
  const forward = (front.i + 1) % count === back.i;
  const leading = between(front.i, tipFront!.i, forward ? -1 : 1);
  const trailing = between(back.i, tipBack!.i, forward ? 1 : -1);
  for (const edge of [leading, trailing]) {
    const turned = edge.find(([, y], i) => y <= (i === 0 ? 0 : edge[i - 1]![1]) || y >= top);
    if (turned)
      return wrong(
        `an edge turns back at ${length(turned[1])} over the base`,
        'edges that rise all the way from base to tip',
      );
  }
  return {
    outline: { rake: (tipFront!.x + tipBack!.x) / 2 - (front.x + back.x) / 2, leading, trailing },
    tip: drawnTip,
  };
}
