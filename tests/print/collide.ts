import { widthOf } from '../../src/sheet/lettering.js';
import type { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';

/**
 * Words on a page as pdf.js measures them, mm from its lower left corner: four corners around the capitals,
 * counter-clockwise.
 */
export interface WordsBox {
  readonly text: string;
  readonly height: number;
  readonly corners: readonly (readonly [number, number])[];
}

const MM = 25.4 / 72;
/** Height of capitals in DejaVu Sans, as a share of its size (its table OS/2). */
const CAPITALS = 0.729;

type Pdf = Awaited<ReturnType<typeof getDocument>['promise']>;

/** Every run of words of a page with its box, by the widths that the file's own font says (ISO 32000-1, 9.2.4). */
export async function wordsOf(pdf: Pdf, number: number): Promise<WordsBox[]> {
  const page = await pdf.getPage(number);
  const { items } = await page.getTextContent();
  return items
    .map(trimmed)
    .flatMap(parted)
    .flatMap((item): WordsBox[] => {
      if (!('str' in item) || item.str.trim() === '') return [];
      const [a, b, , , e, f] = item.transform as number[];
      const size = Math.hypot(a!, b!);
      const [ux, uy] = [a! / size, b! / size];
      const [width, height] = [item.width * MM, size * CAPITALS * MM];
      const [x, y] = [e! * MM, f! * MM];
      const at = (along: number, up: number) => [x + along * ux - up * uy, y + along * uy + up * ux] as const;
      return [{ text: item.str, height, corners: [at(0, 0), at(width, 0), at(width, height), at(0, height)] }];
    });
}

/** Without the space that pdf.js adds where the next words stand close. */
function trimmed<Item extends object>(item: Item): Item {
  if (!('str' in item && 'width' in item)) return item;
  const str = (item.str as string).trimEnd();
  return str === item.str || !/^\d+$/.test(str) ? item : { ...item, str, width: widthOf(str, CAPITALS) * sizeOf(item) };
}

const sizeOf = (item: object): number =>
  'transform' in item ? Math.hypot((item.transform as number[])[0]!, (item.transform as number[])[1]!) : 0;

/**
 * Numbers that stand side by side come out of pdf.js as one run of words: the first and the last are measured by
 * themselves.
 */
function parted<Item extends object>(item: Item): Item[] {
  if (!('str' in item && 'transform' in item && 'width' in item)) return [item];
  const [str, [a, b, c, d, e, f], width] = [item.str as string, item.transform as number[], item.width as number];
  const [, first, second] = /^([LCR]\d-\d+[a-z]?|\d+) +(?:\d+ +)*([LCR]\d-\d+[a-z]?|\d+) *$/.exec(str) ?? [];
  if (first === undefined || second === undefined) return [item];
  const size = Math.hypot(a!, b!);
  const wide = (words: string) => widthOf(words, CAPITALS) * size;
  const off = width - wide(second);
  return [
    { ...item, str: first, width: wide(first) },
    {
      ...item,
      str: second,
      width: wide(second),
      transform: [a, b, c, d, e! + (off * a!) / size, f! + (off * b!) / size],
    },
  ];
}

/** How much two boxes are over one another along the way in which they are least so, mm; 0 where they are apart. */
export function overprint(a: WordsBox, b: WordsBox): number {
  let least = Infinity;
  for (const [p, q] of [a.corners, b.corners].flatMap((c) => [[c[0]!, c[1]!] as const, [c[1]!, c[2]!] as const])) {
    const length = Math.hypot(q[0] - p[0], q[1] - p[1]);
    if (length < 1e-9) continue;
    const [ux, uy] = [(q[0] - p[0]) / length, (q[1] - p[1]) / length];
    const span = (box: WordsBox) => box.corners.map(([x, y]) => x * ux + y * uy);
    const [s, t] = [span(a), span(b)];
    least = Math.min(least, Math.min(Math.max(...s), Math.max(...t)) - Math.max(Math.min(...s), Math.min(...t)));
  }
  return Math.max(0, least);
}

/** From which share of a straight line to which it lies within a box; where it does not, from is no less than to. */
export function shareWithin({ corners }: Pick<WordsBox, 'corners'>, a: Spot, b: Spot): readonly [number, number] {
  let [from, to] = [0, 1];
  corners.forEach(([x, y], i) => {
    const [nx, ny] = corners[(i + 1) % corners.length]!;
    const side = ([px, py]: Spot) => (nx - x) * (py - y) - (ny - y) * (px - x);
    const [sa, sb] = [side(a), side(b)];
    if (sa < 0 && sb < 0) to = -1;
    else if (sa < 0) from = Math.max(from, sa / (sa - sb));
    else if (sb < 0) to = Math.min(to, sa / (sa - sb));
  });
  return [from, to];
}

type Spot = readonly [number, number];

/** The length of a straight line within a box of words, mm. */
export function within(box: WordsBox, a: Spot, b: Spot): number {
  const [from, to] = shareWithin(box, a, b);
  return Math.max(0, to - from) * Math.hypot(b[0] - a[0], b[1] - a[1]);
}
