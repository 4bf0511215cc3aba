import { inchesOf, RULE_PARTS } from './inches.js';
import { read, type Parsed } from './parsed.js';
import type { QuantityKind } from './kind.js';
import { parseQuantity } from './quantity.js';
import { MM_PER_FOOT, MM_PER_INCH, type Units } from './units.js';

const LENGTH: QuantityKind = {
  name: 'a length',
  units: [
    { names: ['mm', 'millimetre', 'millimetres', 'millimeter', 'millimeters'], worth: 1 },
    { names: ['cm', 'centimetre', 'centimetres', 'centimeter', 'centimeters'], worth: 10 },
    { names: ['m', 'metre', 'metres', 'meter', 'meters'], worth: 1000 },
    { names: ['in', 'in.', 'inch', 'inches', '"', '″', '”', "''"], worth: MM_PER_INCH },
    { names: ['ft', 'ft.', 'foot', 'feet', "'", '′', '’'], worth: MM_PER_FOOT },
  ],
  together: { larger: 'ft', smaller: 'in', count: 12, decimalsAreAsked: true },
  decimal: { unit: 'mm', fractionsOf: 'in' },
  examples: '19 mm, 1.9 cm, 3/4 in or 11 ft 4 in',
};

/**
 * Reads a length as a builder writes it: `19 mm`, `1.9 cm`, `2 m`, `0.75 in`, `3/4"`, `11 ft 4 in`, `11' 4 1/2"`,
 * `½ in`.
 *
 * @param written the text, or a bare number
 * @param units what a bare number is in
 * @returns millimetres, or what is wrong
 */
export function parseLength(written: string | number, units: Units): Parsed {
  const parsed = parseQuantity(written, LENGTH, units);
  return parsed.ok ? read(sameNumber(parsed.value)) : parsed;
}

/**
 * Rounds to a nanometre, so that one place is one number however it was written or added up: 20 in and 1 ft 8 in differ
 * in the last digit of a machine's arithmetic.
 */
export function sameNumber(mm: number): number {
  return Math.round(mm * 1e6) / 1e6;
}

/**
 * Writes a length for the bench: whole millimetres or one decimal (`19 mm`, `19.1 mm`), or inches to 1/16 (`4 1/2 in`).
 *
 * @param mm the length, mm
 * @param feet whether inches are to be counted up into feet (`11 ft 4 1/2 in`)
 */
export function printLength(mm: number, units: Units, feet?: 'feet'): string {
  const sign = mm < 0 ? '-' : '';
  if (units === 'mm') {
    const rounded = Math.round(Math.abs(mm) * 10) / 10;
    return `${rounded === 0 ? '' : sign}${rounded} mm`;
  }
  const parts = Math.round((Math.abs(mm) / MM_PER_INCH) * RULE_PARTS);
  const inFeet = feet === undefined ? 0 : Math.floor(parts / (12 * RULE_PARTS));
  const inches = inchesOf(parts - inFeet * 12 * RULE_PARTS);
  const written = inFeet === 0 ? `${inches} in` : inches === '0' ? `${inFeet} ft` : `${inFeet} ft ${inches} in`;
  return `${parts === 0 ? '' : sign}${written}`;
}
