import words from '../../templates/proof.json' with { type: 'json' };
import type { Units } from '../length/units.js';
import type { Fault } from '../proof/fault.js';
import { say } from '../words/say.js';

/** A fault of a finished plan as a sentence for a builder, its lengths as exact as the proof. */
export function sayFault({ kind, where, by, has, needs }: Fault, units: Units): string {
  const exact = (mm: number) => (units === 'mm' ? `${mm.toFixed(2)} mm` : `${(mm / 25.4).toFixed(3)} in`);
  const sentence = kind === 'block' ? words.block[by ?? 'missing'] : words[kind];
  return say(sentence, { where, by: by ?? '', has: exact(has), needs: exact(needs) });
}
