import type { Pdf } from './document.js';
import type { Box } from '../trace/box.js';
import { fontSizeFor, oneLine } from '../trace/lettering.js';
import { narrow, type Line } from '../trace/line.js';
import { POINTS_PER_MM } from '../paper/paper.js';
import type { Tag, Tags } from './tags.js';

/** Draws on one page: true millimetres on the paper, from its lower left corner, `y` up. */
export interface Pen {
  /** A run of straight lines: x0, y0, x1, y1, …; `phase` is the length already drawn of its dash pattern. */
  line(points: ArrayLike<number>, style?: Line, phase?: number): void;
  /** A filled black outline. */
  fill(points: ArrayLike<number>): void;
  /** Filled black rectangles. */
  fillBoxes(boxes: readonly Box[]): void;
  rectangle(box: Box, style?: Line): void;
  circle(x: number, y: number, radius: number, style?: Line): void;
  /**
   * Writes one line of text; without `fit` as wide as it comes, with it made smaller until it fits into that many mm.
   */
  text(text: string, x: number, y: number, how: Lettering): void;
  /** Draws within a rectangle only. */
  within(box: Box, draw: () => void): void;
  /**
   * Says what that which `draw` draws is, for readers that speak or reflow; `alt` is what a figure shows. Text outside
   * of all this is a paragraph.
   */
  tagged(tag: Tag, draw: () => void, alt?: string): void;
  /** Makes the rectangle lead to the page of that name. */
  link(box: Box, name: string): void;
}

export interface Lettering {
  /** Height of capitals, mm. */
  readonly height: number;
  readonly align?: 'left' | 'centre' | 'right';
  readonly angleInDegrees?: number;
  readonly bold?: boolean;
  readonly fit?: number;
}

/** Width of a text in mm at a height of capitals of 1 mm. */
export type Measure = (text: string, bold: boolean) => number;

/** The least of a line that every printer draws, mm: a zero-width line is left to the device. */
const THINNEST = 0.2;

export function measureOn(doc: Pdf): Measure {
  const known = new Map<string, number>();
  return (text, bold) => {
    const key = (bold ? 'b' : 'r') + text;
    let width = known.get(key);
    if (width === undefined) {
      doc.font(bold ? 'bold' : 'regular').fontSize(100);
      width = (doc.widthOfString(oneLine(text)) / 100) * fontSizeFor(1);
      if (known.size > 20_000) known.clear();
      known.set(key, width);
    }
    return width;
  };
}

/**
 * A pen on the document's present page.
 *
 * @param factors measured over true length of the printer along the page's x and y; everything is drawn as much larger.
 */
export function penOn(
  doc: Pdf,
  measure: Measure,
  factors: { readonly x: number; readonly y: number },
  tags: Tags,
): Pen & { finish(): void } {
  const kx = POINTS_PER_MM / factors.x;
  const ky = POINTS_PER_MM / factors.y;
  const top = doc.page.height;
  // pdfkit turns the page over: y runs down from its top edge.
  const px = (x: number): string => number(x * kx);
  const py = (y: number): string => number(top - y * ky);
  let ops: string[] = [];
  let style: string | undefined;
  const flush = (): void => {
    if (ops.length > 0) doc.addContent(ops.join('\n'));
    ops = [];
  };
  const use = ({ width, dashes }: Line, phase: number): void => {
    const pattern = dashes.map((d) => number(d * kx)).join(' ');
    const wanted = `${number(Math.max(THINNEST, width) * kx)} w [${pattern}] ${number(dashes.length > 0 ? phase * kx : 0)} d`;
    if (wanted !== style) ops.push(wanted);
    style = wanted;
  };
  const trail = (points: ArrayLike<number>): void => {
    for (let i = 0; i + 1 < points.length; i += 2) {
      ops.push(`${px(points[i]!)} ${py(points[i + 1]!)} ${i === 0 ? 'm' : 'l'}`);
    }
  };
  const pen: Pen = {
    line(points, how = narrow, phase = 0) {
      if (points.length < 4) return;
      use(how, phase);
      trail(points);
      const end = points.length - 2;
      const closed = end > 2 && points[0] === points[end] && points[1] === points[end + 1];
      ops.push(closed ? 's' : 'S');
    },
    fill(points) {
      trail(points);
      ops.push('f');
    },
    fillBoxes(boxes) {
      for (const { minX, minY, maxX, maxY } of boxes) {
        ops.push(`${px(minX)} ${py(maxY)} ${number((maxX - minX) * kx)} ${number((maxY - minY) * ky)} re`);
      }
      ops.push('f');
    },
    rectangle({ minX, minY, maxX, maxY }, how = narrow) {
      pen.line([minX, minY, maxX, minY, maxX, maxY, minX, maxY, minX, minY], how);
    },
    circle(x, y, radius, how = narrow) {
      const points = Array.from({ length: 49 }, (_, i) => [
        x + radius * Math.cos((Math.PI * (i % 48)) / 24),
        y + radius * Math.sin((Math.PI * (i % 48)) / 24),
      ]).flat();
      pen.line(points, how);
    },
    text(text, x, y, { height, align = 'left', angleInDegrees = 0, bold = false, fit }) {
      const words = oneLine(text);
      if (words.trim() === '') return;
      const wide = measure(words, bold);
      const size = fit !== undefined && wide * height > fit ? fit / wide : height;
      const before = { left: 0, centre: -wide / 2, right: -wide }[align] * size;
      const turn = (angleInDegrees * Math.PI) / 180;
      // From the middle of the capitals down to the baseline, and back to where the text begins.
      const bx = x + before * Math.cos(turn) + (size / 2) * Math.sin(turn);
      const by = y + before * Math.sin(turn) - (size / 2) * Math.cos(turn);
      const [left, base] = [bx * kx, top - by * ky];
      const write = (): void => {
        flush();
        doc.font(bold ? 'bold' : 'regular').fontSize(fontSizeFor(size) * POINTS_PER_MM);
        if (angleInDegrees !== 0) doc.save().rotate(-angleInDegrees, { origin: [left, base] });
        doc.text(words, left, base, { lineBreak: false, baseline: 'alphabetic' });
        if (angleInDegrees !== 0) doc.restore();
      };
      pen.tagged('P', write);
    },
    within({ minX, minY, maxX, maxY }, draw) {
      ops.push('q');
      const before = style;
      trail([minX, minY, maxX, minY, maxX, maxY, minX, maxY]);
      ops.push('h W n');
      draw();
      ops.push('Q');
      style = before;
    },
    tagged: (tag, draw, alt) => tags.tagged(tag, draw, flush, alt),
    link({ minX, minY, maxX, maxY }, name) {
      doc.goTo(minX * kx, top - maxY * ky, (maxX - minX) * kx, (maxY - minY) * ky, name);
    },
  };
  return { ...pen, finish: flush };
}

/** To a thousandth of a point: 0.0004 mm, which adds up to nothing over the seams of a board. */
const number = (value: number): string => {
  if (!Number.isFinite(value)) throw new Error('a page has a coordinate that is not a number');
  return String(Math.round(value * 1000) / 1000);
};
