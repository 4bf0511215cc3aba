import { inchesOf, RULE_PARTS } from './inches.js';
import type { QuantityKind } from './kind.js';
import type { FoundNumber } from './number.js';
import { unread, type Parsed } from './parsed.js';

/** What stands below the line of a fraction of an inch. */
const BELOW = [2, 4, 8, 16, 32, 64, 128];
/** Into more parts than this an inch is divided by halving only. */
const MOST_PARTS = 12;

/**
 * What can be read in two ways is asked about: `37/8` (4 5/8, or 3 7/8?), `11.4 ft` (11 ft 4 13/16 in, or 11 ft 4 in?),
 * `3 7/8 mm`.
 */
export function ambiguity(
  text: string,
  { value, end, as }: FoundNumber,
  unit: string,
  kind: QuantityKind,
  isLast: boolean,
): Parsed<never> | undefined {
  const quoted = `"${text.slice(0, 40)}"`;
  if (typeof as === 'object') {
    const { whole, above, below } = as;
    if (above >= below) {
      const readings = [withFraction(whole, above, below), ...(whole === 0 ? spaceLost(above, below) : [])];
      const [first, ...others] = readings;
      const meant = others.length === 0 ? '' : `; ${others.join(' or ')} may be meant`;
      return unread(
        `${quoted} has more above its line than below: it is ${first}${meant}`,
        `write ${readings.join(' or ')}`,
      );
    }
    if (unit === kind.decimal?.fractionsOf && below > MOST_PARTS && !BELOW.includes(below))
      return unread(
        `${quoted} has ${below} below its line, and no rule is divided so`,
        'write halves, quarters, and so on to 64ths: 3 7/8 in',
      );
    if (unit === kind.decimal?.unit)
      return unread(
        `${quoted} is a fraction of a ${kind.decimal.unit}, which no rule has`,
        `write ${fractionIn(text)} ${kind.decimal.fractionsOf} where that is meant, or a decimal: ${Number(value.toFixed(2))} ${unit}`,
      );
  }
  const pair = kind.together;
  const behindPoint = /\.(\d+)$/.exec(text.slice(0, end))?.[1];
  if (isLast && as === 'decimal' && pair?.decimalsAreAsked && unit === pair.larger && Number(behindPoint ?? 0) > 0) {
    const smaller = Number(behindPoint);
    if (smaller >= pair.count) return undefined;
    const larger = Math.floor(value);
    const meant = `${larger} ${pair.larger} ${smaller} ${pair.smaller}`;
    const exact = `${larger} ${pair.larger} ${inchesOf(Math.round((value - larger) * pair.count * RULE_PARTS))} ${pair.smaller}`;
    return unread(`${quoted} is ${exact}; ${meant} may be meant`, `write ${exact} or ${meant}`);
  }
  return undefined;
}

/** What numbers that stand beside each other may have been: `3 7 8` and `3 78` are 3 7/8 with its line lost. */
export function runTogether(text: string): string | undefined {
  const numbers = /^(\d+) (\d+)(?: (\d+))?(?!\d)(?! ?[\d/.])/.exec(text);
  if (!numbers) return undefined;
  const [, whole, second, third] = numbers;
  const pairs = third === undefined ? splits(second!) : [[Number(second), Number(third)] as const];
  const found = pairs.find(([above, below]) => above < below && BELOW.includes(below));
  return found && `${whole} ${found[0]}/${found[1]}${text.slice(numbers[0].length)}, where that is meant`;
}

/** `4 5/8` for 37 eighths. */
function withFraction(whole: number, above: number, below: number): string {
  const all = whole + Math.floor(above / below);
  const rest = above % below;
  return rest === 0 ? `${all}` : `${all} ${rest}/${below}`;
}

/** `3 7/8` for 37/8, `13 7/8` for 137/8: the space before the fraction was lost. */
function spaceLost(above: number, below: number): string[] {
  const fits = splits(`${above}`).filter(([whole, part]) => whole > 0 && part > 0 && part < below);
  return fits.map(([whole, part]) => `${whole} ${part}/${below}`);
}

/** Every way to part digits in two numbers. */
function splits(digits: string): (readonly [number, number])[] {
  return Array.from({ length: digits.length - 1 }, (_, i) => [
    Number(digits.slice(0, i + 1)),
    Number(digits.slice(i + 1)),
  ]);
}

function fractionIn(text: string): string {
  return text.replace(/[^\d/⁄½¼¾⅛⅜⅝⅞⅓⅔ -].*$/, '').trim();
}
