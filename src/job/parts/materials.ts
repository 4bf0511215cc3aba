import type { Material } from '../spec/material.js';
import { z } from 'zod';
import { MATERIALS } from '../materials.js';
import { nearest } from '../mistake/nearest.js';
import type { Quantities } from '../quantities.js';
import type { Path, Say } from '../mistake/say.js';
import { shortText } from '../text.js';

export function densitySchema(q: Quantities) {
  return q.density('weight by volume, best weighed from an offcut', {
    least: 5,
    most: 1500,
    because: 'the lightest foams and the heaviest woods lie in that range',
  });
}

export function materialsSchema(q: Quantities) {
  return z
    .record(
      z.string(),
      z.strictObject({
        density: densitySchema(q),
        source: shortText('where the density comes from').optional(),
        spread: q
          .share('how far it may be off either way, two times out of three; 5 % unless this says otherwise', {
            least: 0.001,
            most: 0.5,
            because: 'a smaller spread cannot be known, a larger one says nothing',
          })
          .optional(),
      }),
    )
    .meta({
      description: 'your own materials by name, with their densities; a name from the table is replaced by yours',
    });
}

export type MaterialsFile = z.infer<ReturnType<typeof materialsSchema>>;

/** How far a density that a builder gives is taken to be off; common practice, no source. */
const OWN_SPREAD = 0.05;

/** Finds a material by its name; a name nobody knows is said and stands in as a material without a density. */
export type FindMaterial = (name: string, path: Path, say: Say) => Material;

/** The table of materials with the builder's own laid over it. */
export function materialFinder(own: MaterialsFile = {}): FindMaterial {
  const known = new Map(MATERIALS.map((material) => [material.name, material]));
  for (const [name, { density, source, spread = OWN_SPREAD }] of Object.entries(own)) {
    known.set(name, { name, density, source: source ?? 'given in the job', spread });
  }
  return (name, path, say) => {
    const material = known.get(name);
    if (material) return material;
    const names = [...known.keys()];
    const meant = nearest(name, names);
    say.error(
      path,
      `no material is called "${name}"`,
      `${meant ? `did you mean "${meant}"? Otherwise one` : 'one'} of ${names.join(', ')}; or add your own under materials with its density`,
    );
    return { name, density: NaN, source: '' };
  };
}
