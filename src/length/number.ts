/** A number found in a text, and where the text goes on behind it. */
export interface FoundNumber {
  readonly value: number;
  readonly end: number;
  /**
   * How it was written, where that says more than its value: a fraction (`above` its line and `below`), or with a
   * decimal point.
   */
  readonly as: 'whole' | 'decimal' | { readonly whole: number; readonly above: number; readonly below: number };
}

/** Vulgar fractions as keyboards and phones offer them (Unicode, Latin-1 Supplement and Number Forms). */
const VULGAR: Readonly<Record<string, number>> = {
  '½': 1 / 2,
  '¼': 1 / 4,
  '¾': 3 / 4,
  '⅛': 1 / 8,
  '⅜': 3 / 8,
  '⅝': 5 / 8,
  '⅞': 7 / 8,
  '⅓': 1 / 3,
  '⅔': 2 / 3,
};

const SLASHED = /(?:(\d+)(?:\s+|-))?(\d+)\s*[/⁄]\s*(\d+)/y;
const WITH_VULGAR = new RegExp(`(?:(\\d+)(?:\\s*|-))?([${Object.keys(VULGAR).join('')}])`, 'y');
const DECIMAL = /\d+\.\d*|\.\d+|\d+/y;

/**
 * The number that begins at `start`: `19`, `0.75`, `3/4`, `4 1/2`, `4-1/2`, `4½`.
 *
 * @returns undefined when no number begins there or a fraction has a zero below.
 */
export function numberAt(text: string, start: number): FoundNumber | undefined {
  const slashed = matchAt(SLASHED, text, start);
  if (slashed) {
    const [whole, above, below] = [slashed[1] ?? '0', slashed[2], slashed[3]].map(Number) as [number, number, number];
    if (below === 0) return undefined;
    return { value: whole + above / below, end: start + slashed[0].length, as: { whole, above, below } };
  }
  const vulgar = matchAt(WITH_VULGAR, text, start);
  if (vulgar) {
    const [whole, part] = [Number(vulgar[1] ?? 0), VULGAR[vulgar[2]!]!];
    return { value: whole + part, end: start + vulgar[0].length, as: { whole, above: part, below: 1 } };
  }
  const decimal = matchAt(DECIMAL, text, start);
  if (!decimal) return undefined;
  const as = decimal[0].includes('.') ? 'decimal' : 'whole';
  return { value: Number(decimal[0]), end: start + decimal[0].length, as };
}

function matchAt(pattern: RegExp, text: string, start: number): RegExpExecArray | null {
  pattern.lastIndex = start;
  return pattern.exec(text);
}
