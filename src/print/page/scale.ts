import { heightOf, widthOf, type Box } from '../trace/box.js';

/** Reductions recommended by ISO 5455:1979: 1:1, 1:2, 1:5, 1:10, 1:20, … */
const STEPS = [1, 2, 5];

/** The largest recommended scale, no larger than 1, at which a box fits into a room of that size, mm. */
export function scaleFor(box: Box, width: number, height: number): number {
  for (let decade = 1; ; decade *= 10) {
    for (const step of STEPS) {
      const scale = 1 / (step * decade);
      if (widthOf(box) * scale <= width && heightOf(box) * scale <= height) return scale;
      if (scale < 1e-6) throw new Error('a drawing is larger than a million pages');
    }
  }
}

/** A scale as drawings state it: `1 : 20`. */
export const scaleText = (scale: number): string => `1 : ${String(Math.round(1 / scale))}`;
