import { GLASS_AND_EPOXY } from '../job/usual-glass.js';
import type { Material } from '../job/spec/material.js';

/**
 * Stiffness of materials along the board (modulus of elasticity), MPa.
 *
 * Woods: USDA FPL-GTR-282 (2021), tables 5-3b and 5-5b at 12 % moisture, with the 10 % of its footnote for true
 * bending. Paulownia: Akyildiz & Kol, J. Environ. Biol. 31(3):351-355, 2010. Expanded foams: secant at 1 % of ASTM
 * D6817; laboratory samples run at half of what is found in the field (Negussey 2007), so foam is known to a factor of
 * two and matters little. Extruded foams and polyurethane: from memory.
 */
const KNOWN: Readonly<Record<string, number>> = {
  redwood: 9240 * 1.1,
  'redwood-young': 7580 * 1.1,
  'western-red-cedar': 7650 * 1.1,
  'sitka-spruce': 10820 * 1.1,
  basswood: 10070 * 1.1,
  balsa: 3380 * 1.1,
  paulownia: 4281,
  'eps-12': 1.5,
  'eps-15': 2.5,
  'eps-19': 4,
  'eps-22': 5,
  'eps-29': 7.5,
  'eps-39': 10.3,
  'xps-25': 9,
  'xps-29': 11,
  'xps-35': 14,
  'xps-48': 20,
  'pu-blank': 6,
};

/** Heavier than this, kg/m³, is wood. */
const LIGHTEST_WOOD = 90;

/** Modulus of a member's or a block's material along the board, MPa; of the builder's own by what it weighs. */
export function modulusOf({ name, density }: Material): number {
  return KNOWN[name] ?? (density > LIGHTEST_WOOD ? woodByDensity(density) : foamByDensity(density));
}

/** Foam's modulus of elasticity over its shear modulus: 2.2 to 2.6 (Zenkert 1997, from memory), the middle of it. */
const FOAM_OVER_SHEAR = 2.4;
/**
 * The same for wood along and across the grain: softwoods lie between 12 and 20 (Wood Handbook, table of elastic
 * ratios; from memory).
 */
const WOOD_OVER_SHEAR = 16;

/** Shear modulus of a member's or a block's material, upright along the board, MPa. */
export function shearModulusOf(material: Material): number {
  return modulusOf(material) / (material.density > LIGHTEST_WOOD ? WOOD_OVER_SHEAR : FOAM_OVER_SHEAR);
}

/**
 * Softwoods at 12 % moisture: 20.5 GPa · G^0.84, where G is the ovendry weight by volume (Wood Handbook, table of
 * functions relating mechanical properties to specific gravity; from memory), and 10 % for true bending.
 */
function woodByDensity(density: number): number {
  const gravity = density / 1120;
  return 1.1 * 20500 * gravity ** 0.84;
}

/** Rigid polyurethane of 32–48 kg/m³ has 2–8 MPa (from memory): the middle of it. */
function foamByDensity(density: number): number {
  return density / 8;
}

/** g/cm³. */
const GLASS = GLASS_AND_EPOXY.fibreDensity / 1000;
const EPOXY = GLASS_AND_EPOXY.resinDensity / 1000;

/**
 * A laminate of woven cloth.
 *
 * @param cloth g/m²
 * @param resin by weight, as a share of the cloth's
 * @returns its thickness, mm, and its modulus along the board, MPa: 30 ψ − 0.5 GPa, ψ the share of glass by weight (the
 *   form of ISO 12215-5, from memory; hand lay-up lies between 10 and 15 GPa)
 */
export function laminateOf(cloth: number, resin: number): { thickness: number; modulus: number } {
  return {
    thickness: (cloth / GLASS + (cloth * resin) / EPOXY) / 1000,
    modulus: 30000 / (1 + resin) - 500,
  };
}
