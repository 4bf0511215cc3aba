import words from '../../templates/command.json' with { type: 'json' };
import type { Finding } from '../finding/finding.js';
import { parseLength, printLength } from '../length/length.js';
import { printAs } from '../length/rounded.js';
import { MM_PER_INCH, type Units } from '../length/units.js';
import { say } from '../words/say.js';

const W = words.typed.length;

/** A length typed behind an option, mm, and as it was understood. */
export interface TypedLength {
  readonly mm: number;
  readonly understood: string;
}

/**
 * Reads a length typed behind an option: as anywhere in the job, a bare number is in the job's units. As it was
 * understood, it is said in both units, so that nobody takes one for the other: `1/8 in (3.2 mm)`.
 *
 * @param option `--depth-error`
 * @param most what is sensible, mm
 * @returns what was wrong with it, where it is no such length.
 */
export function lengthOption(option: string, written: string, units: Units, most: number): TypedLength | Finding {
  const read = parseLength(written, units);
  if (!read.ok) return { where: option, what: read.what, remedy: read.remedy };
  const mm = read.value;
  if (mm < 0) return { where: option, ...W.below, what: say(W.below.what, { written }) };
  if (mm > most)
    return {
      where: option,
      what: say(W.large.what, { length: printLength(mm, units) }),
      remedy: say(W.large.remedy, { most: printAs('there', most, units) }),
    };
  const exact = { mm: `${Number(mm.toFixed(1))} mm`, in: `${Number((mm / MM_PER_INCH).toFixed(3))} in` };
  const other = units === 'mm' ? exact.in : exact.mm;
  const onRule = printLength(mm, units);
  const back = parseLength(onRule, units);
  const own = back.ok && Math.abs(back.value - mm) < SAME ? onRule : exact[units];
  return { mm, understood: `${own} (${other})` };
}

/** A length that the rule's marks give to within this is told by them, mm. */
const SAME = 0.01;
