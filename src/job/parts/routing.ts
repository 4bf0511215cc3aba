import { z } from 'zod';
import { printLength } from '../../length/length.js';
import { MM_PER_INCH, type Units } from '../../length/units.js';
import type { RoutingSpec } from '../spec/routing.js';
import type { Quantities } from '../quantities.js';
import type { Say } from '../mistake/say.js';

/** What a job that says nothing gets, round in the shop's own units (mm, inches). Common practice, no source. */
const DEFAULTS = {
  cutterLength: { mm: 80, in: 3 },
  /** How much wider than the cutter the bush is: the next of the common sizes. */
  bushOver: { mm: 5, in: 1 / 4 },
  guideStock: { mm: 12, in: 1 / 2 },
  /** About the cutter's diameter a pass in foam and soft wood. */
  passDepth: { mm: 12, in: 1 / 2 },
} as const;

export function routingSchema(q: Quantities) {
  const length = (what: string, least: number, most: number, because: string) =>
    q.length(what, { least, most, because }).optional();
  return z
    .strictObject({
      cutterLength: length(
        'how far the cutter can be set out of the router’s base, cutting over all of it',
        5,
        400,
        'cutters for hand-held routers are not longer',
      ),
      bush: length('outside diameter of the guide bush', 4, 80, 'guide bushes lie in that range'),
      guideStock: length('thickness of the stock that guides are cut from', 2, 60, 'it carries the router'),
      pass: length('depth of one pass, at most', 1, 200, 'it is a part of the depth'),
      guides: z
        .union([
          q.share('the most that sharing guides may lose of what is routed out', {
            least: 0,
            most: 0.9,
            because: 'it is a share of the whole',
          }),
          z.strictObject({
            count: z
              .number()
              .int('whole guides only|a whole number')
              .min(1, 'no guide at all|1 or more')
              .max(40, 'more than 40 guides|at most 40')
              .meta({ description: 'how many guides' }),
          }),
        ])
        .meta({
          description:
            'chambers share guides: {count: 6} for so many guides, or 5 % for as few as lose no more of what is routed out; a guide for every chamber unless this is given',
        })
        .optional(),
    })
    .meta({ description: 'the router and the guides it runs on' });
}

export type RoutingFile = z.infer<ReturnType<typeof routingSchema>>;

export function toRouting(file: RoutingFile = {}, cutterDiameter: number, units: Units, say: Say): RoutingSpec {
  const usual = (name: keyof typeof DEFAULTS): number =>
    units === 'mm' ? DEFAULTS[name].mm : DEFAULTS[name].in * MM_PER_INCH;
  const bush = file.bush ?? cutterDiameter + usual('bushOver');
  const print = (mm: number) => printLength(mm, units);
  if (bush <= cutterDiameter) {
    const what = `the cutter of ${print(cutterDiameter)} does not pass through a bush of ${print(bush)} outside`;
    say.error(['bush'], what, `a bush of more than ${print(cutterDiameter)}, or a thinner cutter`);
  }
  const cutterLength = file.cutterLength ?? usual('cutterLength');
  const guideStock = file.guideStock ?? usual('guideStock');
  if (cutterLength <= guideStock) {
    const what = `the cutter, ${print(cutterLength)} long, does not come out of guides of ${print(guideStock)}`;
    say.error(['cutterLength'], what, `more than ${print(guideStock)}, or thinner guides`);
  }
  const { guides } = file;
  return {
    cutterLength,
    bush,
    guideStock,
    passDepth: file.pass ?? usual('passDepth'),
    ...(guides !== undefined && {
      guides: typeof guides === 'number' ? { kind: 'loss', share: guides } : { kind: 'count', count: guides.count },
    }),
  };
}
