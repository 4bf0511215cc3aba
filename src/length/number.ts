/** A number found in a text, and where the text goes on behind it. */
export interface FoundNumber {
  readonly value: number;
  readonly end: number;
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
    const below = Number(slashed[3]);
    if (below === 0) return undefined;
    return { value: Number(slashed[1] ?? 0) + Number(slashed[2]) / below, end: start + slashed[0].length };
  }
  const vulgar = matchAt(WITH_VULGAR, text, start);
  if (vulgar) return { value: Number(vulgar[1] ?? 0) + VULGAR[vulgar[2]!]!, end: start + vulgar[0].length };
  const decimal = matchAt(DECIMAL, text, start);
  return decimal ? { value: Number(decimal[0]), end: start + decimal[0].length } : undefined;
}

function matchAt(pattern: RegExp, text: string, start: number): RegExpExecArray | null {
  pattern.lastIndex = start;
  return pattern.exec(text);
}
