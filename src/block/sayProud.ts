import { printAs, roundedAs } from '../length/rounded.js';
import type { Units } from '../length/units.js';
import type { Proud } from './proud.js';

/**
 * What is planed off flush at a block's nose end and at its tail end: `nose 1.6 mm, tail 5.3 mm`; empty where it is
 * less than a rule shows.
 */
export function sayProud(proud: Proud | undefined, units: Units): string {
  const ends = proud ? (['nose', 'tail'] as const).map((end) => [end, proud[end]] as const) : [];
  return ends
    .filter(([, mm]) => roundedAs('takenOff', mm, units) > 0)
    .map(([end, mm]) => `${end} ${printAs('takenOff', mm, units)}`)
    .join(', ');
}
