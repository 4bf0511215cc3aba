import { inchesOf } from './inches.js';
import { printLength } from './length.js';
import { MM_PER_INCH, type Units } from './units.js';

/** The finest marks of an inch rule, as parts of an inch. */
const THIN_PARTS = 64;

/** What a length of a few millimetres is written in, mm: a sixteenth would be much of it. */
export const THIN_STEP: Readonly<Record<Units, number>> = { mm: 0.1, in: MM_PER_INCH / THIN_PARTS };

/**
 * Writes what is planed off, what is milled to and how high one member stands over another to the nearest of the finest
 * marks of a rule: `4.2 mm`, `5/64 in`.
 *
 * @param mm the length, mm
 */
export function printThin(mm: number, units: Units): string {
  if (units === 'mm') return printLength(mm, units);
  const parts = Math.round(Math.abs(mm) / THIN_STEP.in);
  return `${mm < 0 && parts > 0 ? '-' : ''}${inchesOf(parts, THIN_PARTS)} in`;
}

/** The same as a number, mm. */
export function roundedThin(mm: number, units: Units): number {
  return Math.round(mm / THIN_STEP[units]) * THIN_STEP[units];
}
