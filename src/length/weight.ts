import type { QuantityKind } from './kind.js';
import type { Parsed } from './parsed.js';
import { parseQuantity } from './quantity.js';
import { KG_PER_OUNCE, KG_PER_POUND, type Units } from './units.js';

const WEIGHT: QuantityKind = {
  name: 'a weight',
  units: [
    { names: ['kg', 'kilogram', 'kilograms'], worth: 1 },
    { names: ['g', 'gram', 'grams'], worth: 0.001 },
    { names: ['lb', 'lb.', 'lbs', 'lbs.', 'pound', 'pounds'], worth: KG_PER_POUND },
    { names: ['oz', 'oz.', 'ounce', 'ounces'], worth: KG_PER_OUNCE },
  ],
  together: { larger: 'lb', smaller: 'oz', count: 16 },
  examples: '17.2 kg, 450 g, 38 lb or 37 lb 6 oz',
};

/**
 * Reads a weight: `17.2 kg`, `450 g`, `38 lb`, `37 lb 6 oz`.
 *
 * @param units what a bare number is in: kilograms in a metric shop, pounds in an inch shop
 * @returns kilograms, or what is wrong
 */
export function parseWeight(written: string | number, units: Units): Parsed {
  return parseQuantity(written, WEIGHT, units === 'mm' ? 'kg' : 'lb');
}

/**
 * Writes a weight as a shop's scale shows it: `17.24 kg`, `143 g`, `38.0 lb`, `5.3 oz`. Below one kilogram or pound in
 * the smaller unit.
 *
 * @param kg the weight, kilograms
 */
export function printWeight(kg: number, units: Units): string {
  const rounded = (value: number, decimals: number): string => value.toFixed(decimals).replace(/^-(0(\.0+)?)$/, '$1');
  if (units === 'mm') {
    return Math.abs(kg) < 0.9995 ? `${rounded(kg * 1000, 0)} g` : `${rounded(kg, 2)} kg`;
  }
  const pounds = kg / KG_PER_POUND;
  return Math.abs(pounds) * 16 < 15.95 ? `${rounded(pounds * 16, 1)} oz` : `${rounded(pounds, 1)} lb`;
}

/** The least that a shop's scale shows, kg: a gram, or a tenth of an ounce. */
const SCALE_STEP: Readonly<Record<Units, number>> = { mm: 0.001, in: KG_PER_OUNCE / 10 };
/** What arithmetic leaves of a whole number. */
const ROUNDING = 1e-9;

/** What is weighed out, up to what the scale shows, so that what is told of it adds up. @param kg - kg */
export function poured(kg: number, units: Units): number {
  return Math.ceil(kg / SCALE_STEP[units] - ROUNDING) * SCALE_STEP[units];
}

/** The same in words, in the small unit however much it is: `1012 g`, `29.4 oz`. @param kg - kg */
export function printPoured(kg: number, units: Units): string {
  const steps = Math.round(poured(kg, units) / SCALE_STEP[units]);
  return units === 'mm' ? `${steps} g` : `${(steps / 10).toFixed(1)} oz`;
}
