/** A slip of the hand in a job file: the text with it, the line it is in (from 1), and its kind. */
export interface Mutation {
  readonly kind: Kind;
  readonly text: string;
  readonly line: number;
  /** The line as it has become; nothing where it is gone. */
  readonly written: string;
}

type Draw = () => number;
/** What a slip makes of a line; the same line where it does not apply. */
type Slip = (line: string, draw: Draw) => string;

const pick = <T>(from: readonly T[], draw: Draw): T => from[Math.floor(draw() * from.length)]!;
/** One of the places a pattern matches, replaced. */
const once =
  (pattern: RegExp, by: string | ((found: string) => string)): Slip =>
  (line, draw) => {
    const places = [...line.matchAll(pattern)];
    if (places.length === 0) return line;
    const { 0: found, 1: kept = '', index } = pick(places, draw);
    const instead = typeof by === 'string' ? by.replace('$1', kept) : by(found);
    return line.slice(0, index) + instead + line.slice(index + found.length);
  };

/** Slips in how the file is written. Each leaves no doubt about which line is wrong. */
const OF_FORM = {
  'colon lost': once(/:(?= |$)/g, ''),
  'space behind the colon lost': once(/: (?=\S)/g, ':'),
  'equals sign for the colon': once(/: (?=\S)/g, ' = '),
  'semicolon for the colon': once(/:(?= )/g, ';'),
  'two colons': once(/:(?= |$)/g, '::'),
  'opening bracket lost': once(/[[{]/g, ''),
  'closing bracket lost': once(/[\]}]/g, ''),
  'bracket too many': once(/[[{\]}]/g, (sign) => sign + sign),
  'round bracket': once(/[[{\]}]/g, (sign) => ('[{'.includes(sign) ? '(' : ')')),
  'comma lost': once(/, /g, ' '),
  'moved in one less': once(/^ (?= *\S)/g, ''),
  'moved in one more': once(/^ +(?=\S)/g, (blanks) => `${blanks} `),
  'moved to the left edge': once(/^ +(?=\S)/g, ''),
  'tab for blanks': once(/^ +(?=\S)/g, '\t'),
  'special blank': once(/^ /g, '\u00a0'),
  'dash lost': once(/^( *)- /g, '$1'),
  'space behind the dash lost': once(/^( *)- /g, '$1-'),
  'curly quote before a value': once(/: (?=[\d\p{L}])/gu, ': “'),
  'quote before a value': once(/: (?=[\d\p{L}])/gu, ': "'),
  'semicolon at the end': once(/$/g, ';'),
  'key twice': once(/^ *[\p{L}]+: .*$/gu, (line) => `${line}\n${line}`),
  'letter of a key lost': once(/(?<=[ {]|^)[\p{L}]{3,}(?=:)/gu, (key) => key.slice(1)),
  'letters of a key swapped': once(
    /(?<=[ {]|^)[\p{L}]{4,}(?=:)/gu,
    (key) => `${key[0]}${key[2]}${key[1]}${key.slice(3)}`,
  ),
  'unit misspelt': once(/(?<=\d )(?:in|ft|mm|lb|oz|kg)\b/g, (unit) => `${unit}q`),
  'decimal comma': once(/(?<=\d)\.(?=\d)/g, ','),
} satisfies Record<string, Slip>;

/** Slips in what the file says, and single characters anywhere: what is wrong may show elsewhere, or not at all. */
const OF_CONTENT = {
  'character lost': (line, draw) => {
    const at = Math.floor(draw() * line.length);
    return line.slice(0, at) + line.slice(at + 1);
  },
  'characters swapped': (line, draw) => {
    const at = Math.floor(draw() * (line.length - 1));
    return line.slice(0, at) + (line[at + 1] ?? '') + (line[at] ?? '') + line.slice(at + 2);
  },
  'character twice': (line, draw) => {
    const at = Math.floor(draw() * line.length);
    return line.slice(0, at + 1) + line.slice(at);
  },
  'digit lost': once(/\d/g, ''),
  'digit twice': once(/\d/g, (digit) => digit + digit),
  'whole part lost': once(/\d+ (?=\d+\/)/g, ''),
  'space of a fraction lost': once(/(?<=\d) (?=\d+\/)/g, ''),
  'inches for millimetres': once(/ (?:in|mm)\b/g, (unit) => (unit === ' in' ? ' mm' : ' in')),
  'wrong kind of unit': once(/ (?:in|mm)\b/g, ' kg'),
  'line lost': () => '',
  'line twice': (line) => `${line}\n${line}`,
} satisfies Record<string, Slip>;

export type Kind = keyof typeof OF_FORM | keyof typeof OF_CONTENT;
export const isOfForm = (kind: Kind): boolean => kind in OF_FORM;

/**
 * A reproducible stream of numbers from 0 to 1: xorshift32 (G. Marsaglia, "Xorshift RNGs", J. Statistical Software
 * 8(14), 2003).
 */
export function drawsFrom(seed: number): Draw {
  let state = seed | 0 || 1;
  return () => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    return (state >>> 0) / 2 ** 32;
  };
}

/** `count` files, each with one slip, the kinds in turn. */
export function mutations(texts: readonly string[], count: number, seed: number): Mutation[] {
  const draw = drawsFrom(seed);
  const slips: [string, Slip][] = [...Object.entries(OF_FORM), ...Object.entries(OF_CONTENT)];
  const found: Mutation[] = [];
  for (let i = 0; found.length < count && i < 100 * count; i++) {
    const [kind, slip] = slips[found.length % slips.length]!;
    const lines = pick(texts, draw).split('\n');
    const at = Math.floor(draw() * lines.length);
    const before = lines[at]!;
    // What stands behind a # is not read.
    if (before.trim() === '' || before.trim().startsWith('#')) continue;
    const written = slip(before, draw);
    if (written === before) continue;
    const text = [...lines.slice(0, at), ...(kind === 'line lost' ? [] : [written]), ...lines.slice(at + 1)].join('\n');
    found.push({ kind: kind as Kind, text, line: at + 1, written });
  }
  return found;
}
