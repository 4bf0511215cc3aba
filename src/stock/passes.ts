import { roundedAs } from '../length/rounded.js';
import type { Units } from '../length/units.js';

/** How a power planer is set: so many passes at its largest cut, then one of what is left, mm; 0 for none. */
export interface Passes {
  readonly full: number;
  readonly last: number;
}

/**
 * What is planed off before the finish: down to what is to stay for it, never more.
 *
 * @param over what stands over the finished board where it is least, mm
 * @param stays what stays for finishing by hand, mm
 * @param cut the most that the planer takes in one pass, mm
 */
export function passesFor(over: number, stays: number, cut: number, units: Units): Passes {
  const off = roundedAs('takenOff', Math.max(0, over - stays), units);
  const full = Math.floor(off / cut + ROUNDING);
  return { full, last: roundedAs('takenOff', Math.max(0, off - full * cut), units) };
}

/** What arithmetic leaves of a whole number. */
const ROUNDING = 1e-6;
