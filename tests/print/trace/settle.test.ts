import type { Point } from '../../../src/contour/point.js';
import PDFDocument from 'pdfkit';
import { describe, expect, test } from 'vitest';
import { fontFiles } from '../../../src/print/pen/fonts.js';
import { outside } from '../../../src/print/tile/outside.js';
import { measureOn } from '../../../src/print/pen/pen.js';
import { quadIsCrossed, quadsMeet } from '../../../src/print/trace/quad.js';
import { settled, settledOn } from '../../../src/print/trace/settle.js';
import type { Drawing } from '../../../src/sheet/drawing.js';
import { widthOf } from '../../../src/sheet/lettering.js';
import { line, text } from '../../../src/sheet/primitives.js';

const caption = (...places: Point[]) => ({ places: places.map((at) => [text('R2-07', at, 5)]) });
const drawing = (shapes: Drawing['shapes'], ...captions: NonNullable<Drawing['captions']>): Drawing => ({
  id: 'face-R2',
  title: '',
  notes: [],
  shapes,
  captions,
});
const where = ({ shapes }: Drawing) => shapes.flatMap((s) => (s.kind === 'text' ? [[s.x, s.y]] : []));

describe('words that may stand in one of several places', () => {
  test('stand in the first where nothing crosses them', () => {
    const struck = drawing([line('edge', [-50, 0], [50, 0])], caption([0, 0], [0, 20]));
    expect(where(settled(struck))).toEqual([[0, 20]]);
  });

  test('keep off one another, those that matter most first', () => {
    const two = drawing([], caption([0, 0]), caption([3, 0], [0, 30]));
    expect(where(settled(two))).toEqual([
      [0, 0],
      [0, 30],
    ]);
  });

  test('stand whole on one page, never over a seam', () => {
    const pages = [0, 100].map((minX) => ({ minX, minY: -50, maxX: minX + 100, maxY: 50 }));
    const seam = drawing([], caption([100, 0], [95, 0], [70, 0], [130, 0]));
    expect(where(settledOn([{ drawing: seam, up: 0 }], { pages, taken: [] })[0]!)).toEqual([[70, 0]]);
  });

  test('stand on the page of the arrow that they belong to', () => {
    const pages = [0, 100].map((minX) => ({ minX, minY: -50, maxX: minX + 100, maxY: 50 }));
    const place = (x: number) => [line('edge', [x - 20, 0], [x - 10, 0]), text('NOSE', [x, 0], 5)];
    const over = drawing([], { places: [place(115), place(140)] });
    expect(where(settledOn([{ drawing: over, up: 0 }], { pages, taken: [] })[0]!)).toEqual([[140, 0]]);
    const only = drawing([], { places: [place(115)], optional: true });
    expect(where(settledOn([{ drawing: only, up: 0 }], { pages, taken: [] })[0]!)).toEqual([]);
  });

  test('keep off the marks of seams', () => {
    const pages = [{ minX: 0, minY: -50, maxX: 100, maxY: 50 }];
    const taken = [{ minX: 60, minY: -9, maxX: 80, maxY: 9 }];
    const marked = drawing([], caption([70, 0], [30, 0]));
    expect(where(settledOn([{ drawing: marked, up: 0 }], { pages, taken })[0]!)).toEqual([[30, 0]]);
  });

  test('are said even where no place is free, unless they may be left out', () => {
    const struck = [line('edge', [-50, 0], [50, 0])];
    expect(where(settled(drawing(struck, caption([0, 0]))))).toEqual([[0, 0]]);
    expect(where(settled(drawing(struck, { ...caption([0, 0]), optional: true })))).toEqual([]);
  });
});

describe('boxes of words', () => {
  const square = [0, 0, 10, 0, 10, 10, 0, 10];
  const turned = [12, 0, 17, 5, 12, 10, 7, 5];

  test('meet when they share an area, turned or not', () => {
    expect(quadsMeet(square, turned)).toBe(true);
    expect(
      quadsMeet(
        square,
        turned.map((v, i) => (i % 2 === 0 ? v + 4 : v)),
      ),
    ).toBe(false);
    // The boxes around them overlap; they themselves do not.
    expect(
      quadsMeet(
        [0, 0, 10, 0, 10, 10, 0, 10],
        [18, 6, 24, 12, 18, 18, 12, 12].map((v, i) => (i % 2 ? v : v - 3.5)),
      ),
    ).toBe(false);
  });

  test('are crossed by lines through them, not by lines beside them', () => {
    expect(quadIsCrossed(square, -5, 5, 15, 5)).toBe(true);
    expect(quadIsCrossed(square, 2, 2, 3, 3)).toBe(true);
    expect(quadIsCrossed(square, -5, 6, 5, 18)).toBe(false);
    expect(quadIsCrossed(turned, 6, 0, 9, 0)).toBe(false);
  });

  test('leave of a line what lies outside them', () => {
    expect(outside([0, 0, 10, 0], [{ minX: 4, minY: -1, maxX: 6, maxY: 1 }])).toEqual([
      [0, 0, 4, 0],
      [6, 0, 10, 0],
    ]);
    expect(outside([0, 0, 10, 0, 10, 5], [])).toEqual([[0, 0, 10, 0, 10, 5]]);
  });
});

test('the font table says the widths that pdfkit reads in the font itself', () => {
  const pdf = new PDFDocument({ autoFirstPage: false });
  pdf.registerFont('regular', fontFiles().regular);
  const measure = measureOn(pdf);
  const signs = [...Array.from({ length: 94 }, (_, i) => String.fromCharCode(33 + i)), '·', '×', '–', '—', '°'];
  for (const sign of signs) expect(widthOf(sign, 1), sign).toBeCloseTo(measure(sign, false), 6);
});
