import { parseLength, printLength } from './length.js';
import type { Units } from './units.js';

/**
 * Writes a length so that it is read back as it is: a fraction of an inch where the rule has a mark for it, else
 * millimetres.
 *
 * @param mm the length, mm, on a thousandth
 */
export function printExactly(mm: number, units: Units): string {
  const rough = printLength(mm, units);
  const back = parseLength(rough, units);
  return back.ok && Math.abs(back.value - mm) < SAME ? rough : `${Number(mm.toFixed(3))} mm`;
}

/** mm. */
const SAME = 1e-6;
