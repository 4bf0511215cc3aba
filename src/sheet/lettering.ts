import { wordsOf } from '../length/wordsOf.js';
import { letterWidth } from './letterWidths.js';

/** No letters are lower on the paper, however small a drawing is made, mm (ISO 3098-1:2015). */
export const SMALLEST_LETTERS = 1.8;

/** Heights of capitals, mm. Source: ISO 3098-1:2015, the series of nominal sizes. */
const SERIES = [20, 14, 10, 7, 5, 3.5, 2.5, SMALLEST_LETTERS] as const;

/** How wide a text comes out in the embedded font, mm. */
export function widthOf(words: string, height: number): number {
  let width = 0;
  for (const sign of words) width += letterWidth(sign);
  return width * height;
}

/**
 * The largest standard height at which a text fits into a width and a height, mm, and no larger than `most`; undefined
 * when even the smallest (or `least`) does not fit.
 */
export function heightFitting(
  words: string,
  room: { readonly width: number; readonly height: number },
  most: number = SERIES[0],
  least: number = SERIES[SERIES.length - 1]!,
): number | undefined {
  return SERIES.find((h) => h <= most && h >= least && h <= room.height && widthOf(words, h) <= room.width);
}

/** A sentence in lines no wider than `width` mm, broken at spaces, never within a measure. */
export function wrapped(sentence: string, width: number, height: number): string[] {
  const lines: string[] = [];
  for (const word of wordsOf(sentence)) {
    const longer = lines.length > 0 ? `${lines.at(-1)!} ${word}` : word;
    if (lines.length > 0 && widthOf(longer, height) <= width) lines[lines.length - 1] = longer;
    else lines.push(word);
  }
  return lines;
}
