import { printLength } from '../length/length.js';
import { MM_PER_INCH, type Units } from '../length/units.js';

/** The smallest step that a length is written in, mm. */
const STEP: Readonly<Record<Units, number>> = { mm: 0.1, in: MM_PER_INCH / 16 };
/** Lengths this near to a step, mm, are on it: rounding of the computation, far less than a pencil line. */
const ON_STEP = 0.005;

/**
 * Writes a length that must not be overstated, rounded down: a wall that is there, a depth that may be routed. Otherwise as `printLength`.
 *
 * @param mm the length, mm
 */
export function printAtMost(mm: number, units: Units): string {
  const step = STEP[units];
  return printLength(Math.floor((mm + ON_STEP) / step) * step, units);
}

/** Writes a length that must not be understated, rounded up: how deep halves are routed that are to meet. Otherwise as `printLength`. */
export function printAtLeast(mm: number, units: Units): string {
  const step = STEP[units];
  return printLength(Math.ceil((mm - ON_STEP) / step) * step, units);
}
