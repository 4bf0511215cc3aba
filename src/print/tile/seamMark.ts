import type { Box } from '../trace/box.js';
import { MARK_REACH, type Seam } from './seam.js';

/** Height of the letters that seams and drawings are named by on a sheet, mm. */
export const WORD_HEIGHT = 3.5;

/** Distance of a seam's letters from its line, and from the mark's middle along it, mm: clear of the diagonal. */
const FROM_LINE = 5;
const FROM_MIDDLE = 4;

/** A word on a sheet: its middle and the box that hatching leaves free for it, mm in the run's frame. */
export interface Word {
  readonly text: string;
  readonly x: number;
  readonly y: number;
  readonly bold: boolean;
  readonly box: Box;
}

export function wordAt(text: string, x: number, y: number, width: number, bold: boolean): Word {
  const [half, tall] = [width / 2 + 1, WORD_HEIGHT / 2 + 1.2];
  return { text, x, y, bold, box: { minX: x - half, minY: y - tall, maxX: x + half, maxY: y + tall } };
}

/** The letters of a seam on one side of its line, -1 or 1, at every mark: where its diagonal does not run. */
export function seamLetters(seam: Seam, side: number): readonly Word[] {
  return seam.marks.map(({ along, rising }) =>
    letterAt(seam, side, along - side * (rising ? FROM_MIDDLE : -FROM_MIDDLE)),
  );
}

/** The letters of a seam on one side of its line, at a place along it and so far from it, mm. */
export function letterAt({ letters, way, at }: Seam, side: number, along: number, away = FROM_LINE): Word {
  const width = letters.length * WORD_HEIGHT * 1.05;
  const across = at + side * away;
  return way === 'upright' ? wordAt(letters, across, along, width, true) : wordAt(letters, along, across, width, true);
}

/** The lines that cross a seam at its marks, from corner to corner of the mark: x1, y1, x2, y2. */
export function seamDiagonals({ way, at, marks }: Seam): readonly (readonly [number, number, number, number])[] {
  return marks.map(({ along, rising }) => {
    const [x, y] = way === 'upright' ? [at, along] : [along, at];
    const slope = rising ? MARK_REACH : -MARK_REACH;
    return [x - MARK_REACH, y - slope, x + MARK_REACH, y + slope];
  });
}
