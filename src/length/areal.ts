import type { QuantityKind } from './kind.js';
import type { Parsed } from './parsed.js';
import { parseQuantity } from './quantity.js';
import { KG_PER_OUNCE, MM_PER_FOOT, type Units } from './units.js';

/** Grams per square metre in an ounce per square yard: 33.906, from the exact definitions. */
export const G_M2_PER_OZ_YD2 = (1000 * KG_PER_OUNCE) / ((3 * MM_PER_FOOT) / 1000) ** 2;

const AREAL_WEIGHT: QuantityKind = {
  name: 'a weight by area',
  units: [
    { names: ['g/m2', 'g/m²', 'g/m^2', 'gsm'], worth: 1 },
    // Cloth is named by its ounces to the square yard alone.
    { names: ['oz', 'oz/yd2', 'oz/yd²', 'oz/yd^2', 'ounce', 'ounces'], worth: G_M2_PER_OZ_YD2 },
  ],
  examples: '200 g/m2 or 6 oz',
};

/**
 * Reads the weight of a cloth or a coat by its area: `200 g/m²`, `6 oz` (to the square yard, as cloth is named).
 *
 * @param units what a bare number is in: g/m² in a metric shop, oz/yd² in an inch shop
 * @returns g/m², or what is wrong
 */
export function parseArealWeight(written: string | number, units: Units): Parsed {
  return parseQuantity(written, AREAL_WEIGHT, units === 'mm' ? 'g/m2' : 'oz');
}

/** Writes a weight by area: `203 g/m²`, `6 oz/yd²`. */
export function printArealWeight(gramsPerM2: number, units: Units): string {
  if (units === 'mm') return `${Math.round(gramsPerM2)} g/m²`;
  return `${Number((gramsPerM2 / G_M2_PER_OZ_YD2).toPrecision(3))} oz/yd²`;
}
