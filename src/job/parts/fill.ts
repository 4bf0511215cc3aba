import type { Material } from '../spec/material.js';
import { z } from 'zod';
import type { Quantities } from '../quantities.js';
import type { Say } from '../mistake/say.js';
import { shortText } from '../text.js';
import { densitySchema, type FindMaterial } from './materials.js';

export function fillSchema(q: Quantities) {
  return z
    .strictObject({
      foam: z.string().meta({ description: 'a material by name' }).optional(),
      name: shortText('or a foam of your own: its name').optional(),
      density: densitySchema(q).optional(),
    })
    .meta({ description: 'the light foam that the blocks are cut from' });
}

export type FillFile = z.infer<ReturnType<typeof fillSchema>>;

export function toFill(file: FillFile, material: FindMaterial, say: Say): Material {
  const { foam, name, density } = file;
  if (foam !== undefined) {
    if (density !== undefined)
      say.error(
        ['density'],
        'the density is given beside a material by name',
        'leave it out, or add the material under materials',
      );
    return material(foam, ['foam'], say);
  }
  if (density === undefined)
    say.error([], 'the fill has no material', 'foam: and a name, for instance eps-12, or name: and density:');
  return { name: name ?? 'own foam', density: density ?? NaN, source: 'given in the job' };
}
