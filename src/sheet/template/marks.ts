import type { Point } from '../../contour/point.js';
import { widthOf } from '../lettering.js';
import type { Caption, Shape } from '../drawing.js';
import { text } from '../primitives.js';

/** Height of letters on templates, read at the bench, mm. */
export const LETTERS = 5;
export const SMALL = 3.5;

/** A point of an outline that is not the one before once more. */
export function isNew([x, y]: Point, i: number, all: readonly Point[]): boolean {
  const [px, py] = all[(i + all.length - 1) % all.length]!;
  return i === 0 || Math.hypot(x - px, y - py) > 1e-6;
}

/** Words beside an upright mark from `low` to `high`: level with it where there is room, else along it. */
export function alongMark(said: string, x: number, low: number, high: number): Caption {
  const level = [0.5, 0.3, 0.7, 0.15, 0.85].map((share) => low + share * (high - low));
  const places = [LETTERS, SMALL].flatMap((letters) => {
    const beside = level.flatMap((y): Shape[][] => [
      [text(said, [x + 2, y], letters, 'left')],
      [text(said, [x - 2, y], letters, 'right')],
    ]);
    const along = level.flatMap((y) =>
      [1, -1].map((way): Shape[] => [
        text(said, [x + way * (letters / 2 + 1.5), y], letters, 'centre', { angleInDegrees: 90 }),
      ]),
    );
    return high - low > widthOf(said, letters) ? [...beside, ...along] : beside;
  });
  return { places };
}
