import type { QuantityKind } from './kind.js';
import type { Parsed } from './parsed.js';
import { parseQuantity } from './quantity.js';
import { KG_PER_POUND, M3_PER_CUBIC_FOOT, type Units } from './units.js';

/** Kilograms per cubic metre in a pound per cubic foot: 16.0185, from the exact definitions. */
export const KG_M3_PER_LB_FT3 = KG_PER_POUND / M3_PER_CUBIC_FOOT;

const DENSITY: QuantityKind = {
  name: 'a density',
  units: [
    { names: ['kg/m3', 'kg/m³', 'kg/m^3'], worth: 1 },
    { names: ['g/cm3', 'g/cm³', 'g/cm^3'], worth: 1000 },
    { names: ['lb/ft3', 'lb/ft³', 'lb/ft^3'], worth: KG_M3_PER_LB_FT3 },
  ],
  examples: '15 kg/m3, 0.35 g/cm3 or 2 lb/ft3',
};

/**
 * Reads a density: `15 kg/m3`, `0.35 g/cm³`, `2 lb/ft3`.
 *
 * @param units what a bare number is in: kg/m³ in a metric shop, lb/ft³ in an inch shop
 * @returns kg/m³, or what is wrong
 */
export function parseDensity(written: string | number, units: Units): Parsed {
  return parseQuantity(written, DENSITY, units === 'mm' ? 'kg/m3' : 'lb/ft3');
}

/** Writes a density: `15 kg/m³`, `0.94 lb/ft³`; three figures are more than any foam keeps to. */
export function printDensity(kgPerM3: number, units: Units): string {
  if (units === 'mm') return `${Number(kgPerM3.toPrecision(3))} kg/m³`;
  return `${Number((kgPerM3 / KG_M3_PER_LB_FT3).toPrecision(3))} lb/ft³`;
}
