/** A space that lines may be broken at: not one within a measure, 1 3/16 in or 12 mm, which would be read as another. */
const BREAK = /(?<!\d) +| +(?!(?:\d+\/\d+|mm|in|ft|kg|lb)(?![\w/]))/;

/** What of a line is never parted where it can be helped. */
export const wordsOf = (line: string): readonly string[] => line.split(BREAK);
