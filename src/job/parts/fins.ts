import type { BoardSpec } from '../spec/board.js';
import { z } from 'zod';
import type { Units } from '../../length/units.js';
import type { FinSpec } from '../spec/finish.js';
import type { Quantities } from '../quantities.js';
import type { Say } from '../mistake/say.js';
import { shortText } from '../text.js';
import { alongSchema, placeAlong } from './along.js';
import { finBuildSchema, toBuiltFin } from './fin-build.js';
import type { FindMaterial } from './materials.js';

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
        weight: q
          .weight('what the scale said of one, before it is set', {
            least: 0.005,
            most: 10,
            because: 'fins for boards lie in that range',
          })
          .optional(),
        build: finBuildSchema(q).optional(),
      }),
    )
    .meta({ description: 'the fins, for their weight; and how they are made' });
}

export type FinFile = z.infer<ReturnType<typeof finsSchema>>[number];

export function toFins(
  file: readonly FinFile[] = [],
  board: BoardSpec,
  material: FindMaterial,
  units: Units,
  say: Say,
): FinSpec[] {
  return file.map((each, i): FinSpec => {
    const { name, base, depth, thick, build } = each;
    const fin = {
      name,
      x: placeAlong(each, board.length, units, say.at(i)),
      base,
      tip: each.tip ?? base / 2,
      depth,
      thickness: thick,
      tipThickness: each.tipThick ?? thick * TIP_SHARE,
      density: each.density ?? SOLID_GLASS,
      ...(each.weight !== undefined && { weight: each.weight }),
    };
    return build ? toBuiltFin(build, fin, each.tip, board, material, units, say.at(i, 'build')) : fin;
  });
}
