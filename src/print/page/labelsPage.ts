import printing from '../../../templates/printing.json' with { type: 'json' };
import { heightOf, isEmpty, joinBoxes, widthOf, type Box } from '../trace/box.js';
import { drawTrace, placedAt } from '../pen/drawTrace.js';
import type { Finding } from '../../finding/finding.js';
import type { Leaf, PrintContext } from './leaf.js';
import { dashed } from '../trace/line.js';
import { sheetNamed } from '../paper/paper.js';
import type { Measure, Pen } from '../pen/pen.js';
import type { Label, LabelsPage, LabelStock } from '../../sheet/pages.js';
import { traceOf } from '../trace/trace.js';
import { wrap } from '../pen/wrap.js';
import { say } from '../../words/say.js';

/**
 * Kept free along a label's own edges, mm: printers feed label sheets to within a millimetre or two (common practice,
 * no source).
 */
const FEED = 2.5;

/** Light modules around a code (ISO/IEC 18004, "Quiet zone": four modules wide on all four sides). */
const QUIET = 4;
/** A code grows no larger, and takes no more of a label's width, mm and share. */
const CODE = { largest: 24, share: 0.36 } as const;
/** Letters of number and lines, mm and shares of the room's height. */
const NUMBER = { largest: 12, share: 0.29 } as const;
const LINES = { largest: 3.5, smallest: 2, share: 0.085, pitch: 1.6 } as const;
/**
 * The drawing at a label's foot: its least and greatest height, the letters of the words at its ends, and the space to
 * them, mm.
 */
const SMALL = { least: 2, highest: 6, letters: 2, gap: 1 } as const;
/** The least room in which a label can be read, mm. */
const LEAST = { width: 40, height: 16 } as const;

/**
 * Sheets of labels, row by row, each label at its place on the stock. Throws when the stock's sheet is not in the paper
 * table.
 */
export function layLabels(page: LabelsPage, context: PrintContext): readonly Leaf[] {
  const { stock, labels, title } = page;
  const sheet = sheetOf(stock);
  const factors = { x: context.printer.across, y: context.printer.along };
  const width = sheet.width * factors.x;
  const height = sheet.height * factors.y;
  const perSheet = stock.columns * stock.rows;
  const sheets = Math.max(1, Math.ceil(labels.length / perSheet));
  const edges = edgesOf(stock, context.settings.margin);
  return Array.from({ length: sheets }, (_, i) => ({
    width,
    height,
    factors,
    ...(i === 0 ? { bookmark: title } : {}),
    draw: (pen: Pen) => {
      drawUse(pen, page, { width, height, margin: context.settings.margin });
      labels.slice(i * perSheet, (i + 1) * perSheet).forEach((label, k) => {
        const box = cellBox(stock, k, height);
        if (stock.cutLines) pen.rectangle(box, dashed(0.25));
        drawLabel(pen, label, box, edges, context);
      });
    },
  }));
}

/**
 * Whether the sheet's size matters and when it is valid: over the labels, or under them, where the sheet has a margin
 * that the printer reaches.
 */
function drawUse(
  pen: Pen,
  { stock, use }: LabelsPage,
  { width, height, margin }: { readonly width: number; readonly height: number; readonly margin: number },
): void {
  if (!use) return;
  const top = height - stock.top;
  const foot = top - (stock.rows - 1) * stock.rowPitch - stock.height;
  const y = [top + USE / 2 + 0.5, foot - USE / 2 - 0.5].find((at) => at - USE >= margin && at + USE <= height - margin);
  if (y === undefined) return;
  const left = Math.max(stock.left, margin + 1);
  pen.text(`${use.size}  ·  ${use.when}`, left, y, { height: USE, fit: width - 2 * left });
}

/** Height of the letters beside the labels, mm (ISO 3098-1:2015). */
const USE = 2.5;

/** What is wrong with a stock for a printer that leaves a margin: nothing may stand where it does not print. */
export function labelFindings({ stock }: LabelsPage, margin: number): readonly Finding[] {
  const { left, right, top, bottom } = edgesOf(stock, margin);
  if (stock.width - left - right >= LEAST.width && stock.height - top - bottom >= LEAST.height) return [];
  const { what, remedy } = printing.labels;
  return [{ where: 'labels', what: say(what, { margin, labels: stock.name }), remedy }];
}

function sheetOf(stock: LabelStock): { readonly width: number; readonly height: number } {
  const sheet = sheetNamed(stock.sheet);
  if (!sheet)
    throw new Error(`label stock "${stock.name}" is on a sheet that the paper table does not have: ${stock.sheet}`);
  return sheet;
}

interface Edges {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/**
 * What stays free along a label's edges, mm: the same on all of a sheet, so that they look alike, and enough for those
 * at its edge.
 */
function edgesOf(stock: LabelStock, margin: number): Edges {
  const { width, height } = sheetOf(stock);
  const right = width - stock.left - (stock.columns - 1) * stock.columnPitch - stock.width;
  const bottom = height - stock.top - (stock.rows - 1) * stock.rowPitch - stock.height;
  const free = (toEdge: number): number => Math.max(FEED, margin - toEdge);
  return { left: free(stock.left), right: free(right), top: free(stock.top), bottom: free(bottom) };
}

function cellBox(stock: LabelStock, index: number, sheetHeight: number): Box {
  const minX = stock.left + (index % stock.columns) * stock.columnPitch;
  const maxY = sheetHeight - stock.top - Math.floor(index / stock.columns) * stock.rowPitch;
  return { minX, minY: maxY - stock.height, maxX: minX + stock.width, maxY };
}

/** The number large above, the lines below it, the drawing at the foot, the code at the right with nothing near it. */
function drawLabel(pen: Pen, label: Label, box: Box, edges: Edges, { measure }: PrintContext): void {
  const inner: Box = {
    minX: box.minX + edges.left,
    minY: box.minY + edges.bottom,
    maxX: box.maxX - edges.right,
    maxY: box.maxY - edges.top,
  };
  const right = label.code ? drawCode(pen, label.code, inner, box) : inner.maxX;
  const room = right - inner.minX;
  const height = heightOf(inner);
  const large = Math.min(NUMBER.largest, height * NUMBER.share);
  pen.text(label.number, inner.minX, inner.maxY - large / 2, { height: large, bold: true, fit: room });
  const letters = Math.min(LINES.largest, Math.max(LINES.smallest, height * LINES.share));
  let y = inner.maxY - large - letters;
  for (const line of label.lines.flatMap((words) => wrap(words, room, letters, false, measure))) {
    pen.text(line, inner.minX, y - letters / 2, { height: letters, fit: room });
    y -= letters * LINES.pitch;
  }
  if (label.drawing && y - inner.minY >= SMALL.least)
    drawSmall(pen, label, { ...inner, maxX: right, maxY: y }, measure);
}

/**
 * The drawing between the words at its ends, at the foot of the room; it is a picture to recognise, so no scale is
 * kept.
 */
function drawSmall(pen: Pen, { drawing, ends = ['', ''] }: Label, room: Box, measure: Measure): void {
  const trace = { ...traceOf(drawing!), texts: [] };
  const box = joinBoxes(trace.lines.map((traced) => traced.box));
  if (isEmpty(box)) return;
  const [left, right] = ends.map((words) => (words === '' ? 0 : measure(words, false) * SMALL.letters + SMALL.gap)) as [
    number,
    number,
  ];
  const scale = Math.min(
    Math.max(0, widthOf(room) - left - right) / Math.max(1e-9, widthOf(box)),
    Math.min(heightOf(room), SMALL.highest) / Math.max(1e-9, heightOf(box)),
  );
  const onto = placedAt(box.minX, box.minY, room.minX + left, room.minY, scale);
  const middle = room.minY + (heightOf(box) * scale) / 2;
  pen.text(ends[0], room.minX, middle, { height: SMALL.letters });
  pen.text(ends[1], onto.x(box.maxX) + SMALL.gap, middle, { height: SMALL.letters });
  // At this size hatching would not show: what is marked dark is filled.
  const isDark = ({ shape }: (typeof trace.lines)[number]): boolean => shape.hatch === 'dark';
  drawTrace(pen, { ...trace, lines: trace.lines.filter((line) => !isDark(line)) }, box, onto);
  for (const { points } of trace.lines.filter(isDark))
    pen.fill(points.map((value, i) => (i % 2 === 0 ? onto.x(value) : onto.y(value))));
}

/**
 * A square code in the middle of the room's right edge, its quiet zone wholly on the label: dark modules side by side
 * are one rectangle, so that no hairline of paper parts them. Returns the left end of what must stay light, mm.
 */
function drawCode(pen: Pen, code: readonly (readonly boolean[])[], inner: Box, label: Box): number {
  const size = code.length;
  // With its quiet zone it keeps within the label, and by itself within what is printed.
  const module = Math.min(
    CODE.largest / size,
    (CODE.share * widthOf(inner)) / size,
    heightOf(inner) / size,
    heightOf(label) / (size + 2 * QUIET),
  );
  const quiet = QUIET * module;
  const maxX = Math.min(inner.maxX, label.maxX - quiet);
  const left = maxX - size * module;
  const middle = (inner.minY + inner.maxY) / 2;
  const lowest = label.minY + quiet + size * module;
  const top = Math.min(label.maxY - quiet, Math.max(lowest, middle + (size * module) / 2));
  const boxes: Box[] = [];
  code.forEach((row, r) => {
    for (let c = 0; c < row.length; c++) {
      if (!row[c]) continue;
      const from = c;
      while (row[c + 1]) c++;
      const maxY = top - r * module;
      boxes.push({ minX: left + from * module, minY: maxY - module, maxX: left + (c + 1) * module, maxY });
    }
  });
  pen.fillBoxes(boxes);
  return left - quiet;
}
