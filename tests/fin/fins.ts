import type { FinBuildSpec } from '../../src/job/spec/fin.js';
import type { FinSpec } from '../../src/job/spec/finish.js';

/** Ten layers of 8 oz between two boards of redwood: a fin of a rescue board, invented. mm. */
export function builtFin(more: Partial<FinSpec> = {}, build: Partial<FinBuildSpec> = {}): FinSpec {
  return {
    ...{ name: 'fin', x: 3000, base: 254, tip: 100, depth: 241, thickness: 20, tipThickness: 6, density: 1750 },
    ...more,
    build: {
      outline: { rake: 60, leading: Math.SQRT1_2, trailing: 0.4 },
      section: 'symmetric',
      panel: { cloth: 271.2, layers: 10, fibre: 0.4, fibreDensity: 2540, resinDensity: 1150 },
      wood: [{ material: { name: 'redwood', density: 448, source: 'tests' }, thickness: 9.5 }],
      over: 10,
      leave: 0.5,
      pass: 0.4,
      stands: { away: 0, side: 'centre', cant: 0, toe: 0 },
      ...build,
    },
  };
}
