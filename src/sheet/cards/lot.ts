import type { Point } from '../../contour/point.js';
import type { Shape } from '../drawing.js';
import { widthOf } from '../lettering.js';
import { blockArrow, text } from '../primitives.js';

/** Words that are written together: lines one under the other, or an arrow with its word. Sizes in mm. */
export interface Lot {
  readonly width: number;
  readonly height: number;
  /** Drawn around their middle. */
  draw(x: number, y: number): Shape[];
}

/** From a line to the next, as a share of its height; letters reach so far under it. */
const PITCH = 1.5;
const UNDER = 0.3;
const ARROW = { length: 6.5, width: 4.5, gap: 1.5 } as const;

/** Lines of words, the first above, each with its height: level, or upright and read from the right. */
export function linesLot(lines: readonly (readonly [words: string, height: number])[], isUpright = false): Lot {
  const wide = Math.max(...lines.map(([words, height]) => widthOf(words, height)));
  const tops = lines.map((_, i) => lines.slice(0, i).reduce((sum, [, height]) => sum + PITCH * height, 0));
  const tall = tops.at(-1)! + (1 + UNDER) * lines.at(-1)![1];
  return {
    width: isUpright ? tall : wide,
    height: isUpright ? wide : tall,
    draw: (x, y) =>
      lines.map(([words, height], i) => {
        const down = tops[i]! + height / 2 - tall / 2;
        return isUpright
          ? text(words, [x + down, y], height, 'centre', { angleInDegrees: 90 })
          : text(words, [x, y - down], height);
      }),
  };
}

/** An arrow with its word beside it, away from where it points if it is level; without the word where that is empty. */
export function arrowLot(word: string, toward: Point, height: number): Lot {
  const [dx, dy] = toward;
  const isLevel = dy === 0;
  const wide = widthOf(word, height);
  const along = isLevel ? ARROW.length : ARROW.width;
  const width = along + (word === '' ? 0 : ARROW.gap + wide);
  return {
    width,
    height: isLevel ? Math.max(ARROW.width, height) : Math.max(ARROW.length, height),
    draw(x, y) {
      const side = isLevel ? dx : -1;
      const middle = x + (side * (width - along)) / 2;
      const tip: Point = [middle + (dx * ARROW.length) / 2, y + (dy * ARROW.length) / 2];
      return [
        blockArrow(tip, toward, ARROW.length, ARROW.width),
        ...(word === '' ? [] : [text(word, [x - (side * (width - wide)) / 2, y], height)]),
      ];
    },
  };
}
