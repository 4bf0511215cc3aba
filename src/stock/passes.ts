import { roundedAs } from '../length/rounded.js';
import { THIN_STEP } from '../length/thin.js';
import type { Units } from '../length/units.js';

/** How a power planer is set: so many passes at its largest cut, then one of what is left, mm; 0 for none. */
export interface Passes {
  readonly full: number;
  readonly last: number;
}

/**
 * What is planed off before the finish: down to what is to stay for it, never more. Passes and what stays add up to
 * what stands over, as all three are written.
 *
 * @param over what stands over the finished board where it is least, mm
 * @param stays what stays for finishing by hand, mm
 * @param cut the most that the planer takes in one pass, mm
 */
export function passesFor(over: number, stays: number, cut: number, units: Units): Passes {
  const off = planedOff(over, stays, units);
  const most = Math.max(THIN_STEP[units], roundedAs('pass', cut, units));
  const full = Math.floor(off / most + ROUNDING);
  return { full, last: roundedAs('pass', Math.max(0, off - full * most), units) };
}

/** All of it together, mm. */
export function planedOff(over: number, stays: number, units: Units): number {
  const off = roundedAs('over', over, units) - roundedAs('stays', stays, units);
  return roundedAs('over', Math.max(0, off), units);
}

/** What arithmetic leaves of a whole number. */
const ROUNDING = 1e-6;
