/**
 * A space that lines may be broken at: not one within a measure, 1 3/16 in or 12 mm, which would be read as another.
 */
const BREAK = /(?<!\d) +| +(?!(?:\d+\/\d+|mm|in|ft|kg|lb)(?![\w/]))/;

/** What of a line is never parted where it can be helped. */
export const wordsOf = (line: string): readonly string[] => line.split(BREAK);

/** A text that nobody who breaks it at its spaces parts within a measure: those spaces are no-break ones. */
export const unbroken = (text: string): string =>
  wordsOf(text)
    .map((word) => word.replaceAll(' ', '\u00a0'))
    .join(' ');
