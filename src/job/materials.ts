import type { Material } from './spec/material.js';
import { KG_M3_PER_LB_FT3 } from '../length/density.js';

const WOOD_HANDBOOK = 'USDA FPL-GTR-282 (2021), table 5-3b, and equation 4-11 at 12 % moisture';
const ASTM_D6817 = 'ASTM D6817, minimum density';
const ASTM_C578 = 'ASTM C578, minimum density';

/**
 * Materials by the names a job may use. Densities are of clear dry wood and the least of a foam's type: what comes from
 * the shop differs by a tenth and more, so a builder does well to weigh an offcut and give `materials` in the job.
 */
export const MATERIALS: readonly Material[] = [
  wood('redwood', 0.4),
  wood('redwood-young', 0.35),
  wood('western-red-cedar', 0.32),
  wood('sitka-spruce', 0.4),
  wood('basswood', 0.37),
  {
    name: 'balsa',
    density: 183.9,
    // Sold from half to twice of it.
    spread: 0.25,
    source: 'USDA FPL-GTR-282 (2021), table 5-5b (0.16 green), and equation 4-11 at 12 % moisture',
  },
  { name: 'paulownia', density: 317, source: 'Akyildiz & Kol, J. Environ. Biol. 31(3):351-355, 2010, air-dry' },
  foam('eps-12', 0.7, ASTM_D6817),
  foam('eps-15', 0.9, ASTM_D6817),
  foam('eps-19', 1.15, ASTM_D6817),
  foam('eps-22', 1.35, ASTM_D6817),
  foam('eps-29', 1.8, ASTM_D6817),
  foam('eps-39', 2.4, ASTM_D6817),
  foam('xps-25', 1.55, ASTM_C578),
  foam('xps-29', 1.8, ASTM_C578),
  foam('xps-35', 2.2, ASTM_C578),
  foam('xps-48', 3, ASTM_C578),
  { name: 'pu-blank', density: 48, source: 'board blanks of polyurethane foam weigh 32 to 60 kg/m3; from memory' },
];

/** Ovendry weight by volume at 12 % moisture, with the water added back. */
function wood(name: string, gravityAt12: number): Material {
  return { name, density: Number((1000 * gravityAt12 * 1.12).toFixed(1)), source: WOOD_HANDBOOK };
}

function foam(name: string, poundsPerCubicFoot: number, source: string): Material {
  return { name, density: Number((poundsPerCubicFoot * KG_M3_PER_LB_FT3).toFixed(1)), source };
}
