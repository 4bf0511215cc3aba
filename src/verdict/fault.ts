import words from '../../templates/proof.json' with { type: 'json' };
import type { Finding } from '../finding/finding.js';
import type { Units } from '../length/units.js';
import type { Fault } from '../proof/fault.js';
import { say } from '../words/say.js';

/** A fault of a finished plan as what a builder must act on, its lengths as exact as the proof. */
export function faultFinding({ kind, where, by, has, needs }: Fault, units: Units): Finding {
  const exact = (mm: number) => (units === 'mm' ? `${mm.toFixed(2)} mm` : `${(mm / 25.4).toFixed(3)} in`);
  const { what, remedy } = kind === 'block' ? words.block[by ?? 'missing'] : words[kind];
  const values = { by: by ?? '', has: exact(has), needs: exact(needs), anew: words.anew, fault: words.fault };
  return { where, what: say(what, values), remedy: say(remedy, values) };
}
