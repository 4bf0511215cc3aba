import type { JointFace, Lines } from './jointFace.js';
import type { Standing } from './standing.js';

/** A place along a joint, and how low and high the middle of a dot may lie there, mm. */
export interface PlaceAlong {
  readonly s: number;
  readonly low: number;
  readonly high: number;
}

/** Steps of the lines from one even place to the next. */
const STEPS = 3;

/**
 * Places along a joint where a dot keeps its margin, in rising `s`: even steps, where it just clears a chamber or lies
 * in the middle of a web, and as far from these as dots may be apart.
 */
export function placesAlong(
  { rows }: JointFace,
  lines: Lines,
  off: number,
  spacing: number,
  standing: Standing,
): PlaceAlong[] {
  const marks = new Set<number>();
  const at = new Set<number>();
  for (let i = 0; i < lines.count; i += STEPS) at.add(i * lines.step);
  for (const { row, near } of rows) {
    // At a far face that is not parallel these are a little off, and only less useful for it.
    if (!near && Math.abs(row.face.along[1] - row.through!.along[1]) > 1e-9) continue;
    const parts = standing.get(row.id) ?? [];
    parts.forEach(({ from, to }, i) => {
      marks.add(from - off).add(to + off);
      if (i > 0) marks.add((parts[i - 1]!.to + from) / 2);
    });
  }
  for (const mark of marks)
    at.add(mark)
      .add(mark - spacing)
      .add(mark + spacing);
  return [...at]
    .sort((a, b) => a - b)
    .flatMap((s): PlaceAlong[] => {
      const [low, high] = [lines.bottom(s), lines.top(s)];
      return s >= 0 && high >= low ? [{ s, low, high }] : [];
    });
}
