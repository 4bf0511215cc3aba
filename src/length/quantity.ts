import { ambiguity, runTogether } from './ambiguous.js';
import type { QuantityKind } from './kind.js';
import { numberAt } from './number.js';
import { read, unread, type Parsed } from './parsed.js';

interface Term {
  readonly value: number;
  /** First name of the unit. */
  readonly unit: string;
  readonly worth: number;
}

/**
 * Reads what a builder wrote as a quantity, into the unit used inside.
 *
 * @param written text with its unit, or a bare number
 * @param bare name of the unit that a bare number is in
 */
export function parseQuantity(written: string | number, kind: QuantityKind, bare: string): Parsed {
  if (typeof written === 'number') {
    if (!Number.isFinite(written)) return unread(`${written} is not ${kind.name}`, `write ${kind.examples}`);
    return read(written * unitNamed(bare, kind)!.worth);
  }
  const text = written.trim().replace(/\s+/g, ' ');
  const signed = /^[-+−] ?/.exec(text);
  const negative = signed !== null && !signed[0].startsWith('+');
  const terms = readTerms(text, signed?.[0].length ?? 0, kind, bare);
  if (!terms.ok) return terms;
  const trouble = troubleWith(terms.value, text, kind);
  if (trouble) return trouble;
  const total = terms.value.reduce((sum, term) => sum + term.value * term.worth, 0);
  return read(negative ? -total : total);
}

function readTerms(text: string, start: number, kind: QuantityKind, bare: string): Parsed<Term[]> {
  const terms: Term[] = [];
  let at = start;
  while (at < text.length) {
    const number = numberAt(text, at);
    if (!number) return unread(`"${shortened(text)}" is not ${kind.name}`, `write ${kind.examples}`);
    const rest = text.slice(number.end).trimStart();
    if (/^[/\\]/.test(rest)) {
      return unread(`"${shortened(text)}" is not ${kind.name}`, 'write a fraction behind a space: 3 7/8');
    }
    if (/^,\d/.test(rest)) {
      return unread(`"${shortened(text)}" has a comma in the number`, 'write a decimal point: 1.5, not 1,5');
    }
    const word = /^[^\d\s.½¼¾⅛⅜⅝⅞⅓⅔+-][^\s]*/.exec(rest)?.[0] ?? '';
    const found = word === '' ? bareUnit(terms, kind, bare) : longestUnit(rest, kind);
    if (!found) return unread(`"${shortened(word)}" is not a unit of ${kind.name}`, `write ${kind.examples}`);
    terms.push({ value: number.value, unit: found.unit.names[0]!, worth: found.unit.worth });
    const behind = rest.slice(found.length).trimStart();
    const asked = ambiguity(text, number, found.unit.names[0]!, kind, behind === '');
    if (asked) return asked;
    at = text.length - behind.length;
    const dashed = found.unit.names[0] === kind.together?.larger && /^- ?[\d.½¼¾⅛⅜⅝⅞⅓⅔]/.test(behind);
    if (dashed) at += behind[1] === ' ' ? 2 : 1;
  }
  if (terms.length === 0) return unread(`nothing is written where ${kind.name} should be`, `write ${kind.examples}`);
  return read(terms);
}

type FoundUnit = { readonly unit: QuantityKind['units'][number]; readonly length: number } | undefined;

/**
 * A number without a unit is in the file's unit, or, behind the larger of two that belong together, in the smaller:
 * `11' 4`.
 */
function bareUnit(before: readonly Term[], kind: QuantityKind, bare: string): FoundUnit {
  const goesOn = kind.together !== undefined && before.at(-1)?.unit === kind.together.larger;
  const unit = unitNamed(goesOn ? kind.together.smaller : bare, kind);
  return unit && { unit, length: 0 };
}

/** The unit that `rest` begins with, where the next letter does not make it another word. */
function longestUnit(rest: string, kind: QuantityKind): FoundUnit {
  let best: FoundUnit;
  const lower = rest.toLowerCase();
  for (const unit of kind.units) {
    for (const name of unit.names) {
      const wordGoesOn = /[\p{L}/³²^]/u.test(name.at(-1)!) && /^[\p{L}/³²^]/u.test(lower.slice(name.length));
      if (lower.startsWith(name) && !wordGoesOn && name.length > (best?.length ?? 0))
        best = { unit, length: name.length };
    }
  }
  return best;
}

function unitNamed(name: string, kind: QuantityKind): QuantityKind['units'][number] | undefined {
  return kind.units.find((unit) => unit.names[0] === name);
}

/**
 * Several numbers make one quantity only as feet and inches do: larger unit first, once each, the smaller less than one
 * of the larger.
 */
function troubleWith(terms: readonly Term[], text: string, kind: QuantityKind): Parsed<never> | undefined {
  if (terms.length === 1) return undefined;
  const [first, second] = terms;
  const pair = kind.together;
  const paired = pair && terms.length === 2 && first!.unit === pair.larger && second!.unit === pair.smaller;
  if (!paired) {
    const what = `"${shortened(text)}" is more than one ${kind.name.replace(/^an? /, '')}`;
    return unread(what, `write ${runTogether(text) ?? kind.examples}`);
  }
  if (second!.value < pair.count && Number.isInteger(first!.value)) return undefined;
  return unread(
    `"${shortened(text)}" does not add up`,
    `whole ${pair.larger} and less than ${pair.count} ${pair.smaller}, as in 11 ${pair.larger} 4 ${pair.smaller}`,
  );
}

function shortened(text: string): string {
  return text.length > 40 ? `${text.slice(0, 40)}…` : text;
}
