import type { Pen } from '../pen/pen.js';
import type { Words } from '../../words/printed.js';

/** An inch, mm (by definition). */
export const INCH = 25.4;

/**
 * Height of a bar's spine and of its teeth, mm. All of it is filled, so that the ends are edges and not the middle of a
 * line.
 */
const SPINE = 0.8;
const TOOTH = 2.2;
const TOOTH_WIDTH = 0.4;

/**
 * A bar of exactly `length` mm with a tooth at every `step`, drawn from (x, y) to the right or, `upright`, upward.
 * Teeth point left of the way it runs.
 */
export function drawBar(pen: Pen, x: number, y: number, length: number, step: number, upright: boolean): void {
  const fill = (from: number, to: number, low: number, high: number): void => {
    const corners = upright
      ? [x - low, y + from, x - low, y + to, x - high, y + to, x - high, y + from]
      : [x + from, y + low, x + to, y + low, x + to, y + high, x + from, y + high];
    pen.fill(corners);
  };
  fill(0, length, 0, SPINE);
  const teeth = Math.round(length / step);
  for (let i = 0; i <= teeth; i++) {
    const from = Math.min(length - TOOTH_WIDTH, Math.max(0, i * step - TOOTH_WIDTH / 2));
    fill(from, from + TOOTH_WIDTH, SPINE, TOOTH);
  }
}

/** Room for the level pair of test bars and their labels, mm. */
export const BARS_WIDTH = 118;

/** The level pair of test bars, 100 mm over 4 in, in the box with its lower left corner at (x, y). */
export function drawLevelBars(pen: Pen, x: number, y: number, words: Words): void {
  drawBar(pen, x + 1, y + 6.4, 100, 10, false);
  pen.text(words.barMm, x + 103.5, y + 7.4, { height: 2.5, fit: 14 });
  drawBar(pen, x + 1, y + 1.6, 4 * INCH, INCH / 4, false);
  pen.text(words.barInch, x + 104.5, y + 2.6, { height: 2.5, fit: 13 });
}

/** The upright pair beside the frame: its foot at `y`, `x` the frame's left line. */
export function drawUprightBars(pen: Pen, x: number, y: number, words: Words): void {
  drawBar(pen, x - 9.5, y, 4 * INCH, INCH / 4, true);
  pen.text(words.barInch, x - 13.3, y + 2 * INCH, { height: 2, align: 'centre', angleInDegrees: 90 });
  drawBar(pen, x - 6.3, y, 100, 10, true);
  pen.text(words.barMm, x - 4.6, y + 60, { height: 2, align: 'centre', angleInDegrees: 90 });
}
