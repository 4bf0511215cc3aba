/** Heights of capitals, mm. Source: ISO 3098-1:2015, the series of nominal sizes. */
const SERIES = [20, 14, 10, 7, 5, 3.5, 2.5, 1.8] as const;

/** Room that a character takes, as a share of the height of capitals: a little more than the embedded font needs on average. */
export const CHARACTER_WIDTH = 0.9;

/** The width that a text is allowed for, mm. */
export function widthOf(words: string, height: number): number {
  return Array.from(words).length * height * CHARACTER_WIDTH;
}

/**
 * The largest standard height at which a text fits into a width and a height, mm, and no larger than `most`; undefined when even
 * the smallest (or `least`) does not fit.
 */
export function heightFitting(
  words: string,
  room: { readonly width: number; readonly height: number },
  most: number = SERIES[0],
  least: number = SERIES[SERIES.length - 1]!,
): number | undefined {
  return SERIES.find((h) => h <= most && h >= least && h <= room.height && widthOf(words, h) <= room.width);
}
