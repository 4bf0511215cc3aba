import { MM_PER_FOOT, MM_PER_INCH, type Units } from './units.js';

/** A board's surface or a cloth's: `3.41 m²`, `36.7 ft²`. @param m2 - m² */
export function printArea(m2: number, units: Units): string {
  return units === 'mm' ? `${m2.toFixed(2)} m²` : `${((m2 * 1e6) / MM_PER_FOOT ** 2).toFixed(1)} ft²`;
}

/** What lies on the bench, as a fin: `365 cm²`, `56.6 in²`. @param mm2 - mm² */
export function printSmallArea(mm2: number, units: Units): string {
  return units === 'mm' ? `${(mm2 / 100).toFixed(0)} cm²` : `${(mm2 / MM_PER_INCH ** 2).toFixed(1)} in²`;
}
