import type { BoardSpec } from '../spec/board.js';
import { z } from 'zod';
import type { Units } from '../../length/units.js';
import type { FinSpec } from '../spec/finish.js';
import type { Quantities } from '../quantities.js';
import type { Say } from '../mistake/say.js';
import { shortText } from '../text.js';
import { alongSchema, placeAlong } from './along.js';

/**
 * Solid glass and resin, kg/m³: between the 1600 and 1800 of laminates with a half and a third of resin (common
 * practice, no source).
 */
const SOLID_GLASS = 1750;
/** Fins end thin: a tip of this share of the base's thickness; common practice, no source. */
const TIP_SHARE = 0.25;

export function finsSchema(q: Quantities) {
  const size = (what: string) => q.length(what, { least: 5, most: 800, because: 'fins for boards lie in that range' });
  const thin = (what: string) => q.length(what, { least: 0.5, most: 80, because: 'fins for boards lie in that range' });
  return z
    .array(
      z.strictObject({
        name: shortText('which fin it is'),
        ...alongSchema(q, 'the middle of its base'),
        base: size('length of its base'),
        tip: size('length of its chord near the tip; half of the base unless given').optional(),
        depth: size('from base to tip, square to the bottom'),
        thick: thin('thickness at the base'),
        tipThick: thin('thickness at the tip; a quarter of the base unless given').optional(),
        density: q
          .density('weight by volume; solid glass unless given', {
            least: 50,
            most: 9000,
            because: 'fins are of foam and glass, wood, glass or metal',
          })
          .optional(),
      }),
    )
    .meta({ description: 'the fins, for their weight' });
}

export type FinFile = z.infer<ReturnType<typeof finsSchema>>[number];

export function toFins(file: readonly FinFile[] = [], board: BoardSpec, units: Units, say: Say): FinSpec[] {
  return file.map((fin, i): FinSpec => {
    const { name, base, depth, thick } = fin;
    return {
      name,
      x: placeAlong(fin, board.length, units, say.at(i)),
      base,
      tip: fin.tip ?? base / 2,
      depth,
      thickness: thick,
      tipThickness: fin.tipThick ?? thick * TIP_SHARE,
      density: fin.density ?? SOLID_GLASS,
    };
  });
}
