import { frame } from '../trace/line.js';
import type { Pen } from '../pen/pen.js';

/**
 * Length of a centring mark outside the frame, mm: from the border's 5 mm line to the frame (ISO 5457:1999, 4.3).
 * Inside, the drawing has the room.
 */
const CENTRING = 5;

/** A page's size and the frame's distance from its edges, mm. */
export interface FramedSheet {
  readonly width: number;
  readonly height: number;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** The four centring marks at the middle of the sides, 0.7 mm wide (ISO 5457:1999, 4.3), outside the frame only. */
export function drawCentringMarks(pen: Pen, sheet: FramedSheet): void {
  const middle = sheet.width / 2;
  const half = sheet.height / 2;
  pen.line([middle, sheet.bottom - CENTRING, middle, sheet.bottom], frame);
  pen.line([middle, sheet.height - sheet.top, middle, sheet.height - sheet.top + CENTRING], frame);
  // At the left the test bar stands in the filing border, so its mark keeps to the frame.
  pen.line([sheet.left - CENTRING + 2, half, sheet.left, half], frame);
  pen.line([sheet.width - sheet.right, half, sheet.width - sheet.right + CENTRING, half], frame);
}

/** Sheets longer than this come off a plotter and are trimmed by hand: longer than A3. */
const TRIMMED_FROM = 430;

/**
 * Trimming marks at the corners: two overlapping rectangles of 10 by 5 mm (ISO 5457:1999, 4.5), on sheets that are
 * trimmed.
 */
export function drawTrimmingMarks(pen: Pen, { width, height }: FramedSheet): void {
  if (Math.max(width, height) <= TRIMMED_FROM) return;
  for (const [x, y, right, up] of [
    [0, 0, 1, 1],
    [width, 0, -1, 1],
    [width, height, -1, -1],
    [0, height, 1, -1],
  ] as const) {
    const corner = [0, 0, 10, 0, 10, 5, 5, 5, 5, 10, 0, 10];
    pen.fill(corner.map((value, i) => (i % 2 === 0 ? x + right * value : y + up * value)));
  }
}
