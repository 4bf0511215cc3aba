import { MM_PER_INCH, type Units } from './units.js';

/** What a caliper reads, mm: a hundredth, or a thousandth of an inch. */
export const CALIPER_STEP: Readonly<Record<Units, number>> = { mm: 0.01, in: MM_PER_INCH / 1000 };

/** Writes a length that is set by a caliper, to the nearest of its steps: `14.50 mm`, `0.571 in`. @param mm - mm */
export function printFine(mm: number, units: Units): string {
  return units === 'mm' ? `${mm.toFixed(2)} mm` : `${(mm / MM_PER_INCH).toFixed(3)} in`;
}
