import type { TextShape } from '../../sheet/drawing.js';
import { widthOf } from '../../sheet/lettering.js';

/** Capitals of the embedded open font are this share of its size (DejaVu Sans: 1493 of 2048 units). */
export const CAPITAL_SHARE = 1493 / 2048;

/** The font's size, mm, at which its capitals stand `height` mm high. */
export const fontSizeFor = (height: number): number => height / CAPITAL_SHARE;

/**
 * One line of plain characters: line breaks, tabs and control characters become spaces, so that no writer trips over
 * them.
 */
export const oneLine = (text: string): string =>
  // eslint-disable-next-line no-control-regex
  text.replace(/[\u0000-\u001f\u007f-\u009f\u2028\u2029\ufffe\uffff]+/g, ' ').replace(/\p{Surrogate}/gu, '\ufffd');

/** The box that a text stands in: its four corners, counter-clockwise from the lower left, mm, turned with the text. */
export function cornersOf(shape: TextShape): Float64Array {
  const width = widthOf(shape.text, shape.height);
  const left = shape.align === 'left' ? 0 : shape.align === 'right' ? -width : -width / 2;
  const half = shape.height * 0.75;
  const angle = ((shape.angleInDegrees ?? 0) * Math.PI) / 180;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const corners = new Float64Array(8);
  for (let i = 0; i < 4; i++) {
    const along = i === 1 || i === 2 ? left + width : left;
    const up = i < 2 ? -half : half;
    corners[2 * i] = shape.x + along * cos - up * sin;
    corners[2 * i + 1] = shape.y + along * sin + up * cos;
  }
  return corners;
}
