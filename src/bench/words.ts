import words from '../../templates/bench.json' with { type: 'json' };
import type { Note } from '../chamber/chamber.js';
import { printLength } from '../length/length.js';
import type { Units } from '../length/units.js';

export { words };

/** A note as a line: `R1-03: left solid; the walls leave too little room`. */
export function sayNote({ kind, where, why, by, shorter }: Note, units: Units): string {
  const known: Readonly<Record<string, string>> = words.why;
  const reason = by.length > 0 ? by.join(', ') : (known[why] ?? why);
  const size = shorter === undefined ? '' : ` by ${printLength(shorter, units)}`;
  const kinds: Readonly<Record<string, string>> = words.notes;
  return `${where}: ${kinds[kind] ?? kind}${size}; ${reason}`;
}

/** `deckSkin` as a person says it: `deck skin`. */
export function spoken(key: string): string {
  return key.replace(/([a-z])([A-Z])/g, '$1 $2').toLowerCase();
}
