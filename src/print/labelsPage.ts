import { heightOf, isEmpty, joinBoxes, widthOf, type Box } from './box.js';
import { drawTrace, placedAt } from './drawTrace.js';
import type { Leaf, Studio } from './leaf.js';
import { dashed } from './line.js';
import { sheetNamed } from './paper.js';
import type { Pen } from './pen.js';
import type { Label, LabelsPage, LabelStock } from './set.js';
import { traceOf } from './trace.js';

/** Kept free along a label's edges, mm: printers feed label sheets to within a millimetre or two (common practice, no source). */
const INSET = 2.5;

/** Sheets of labels, row by row, each label at its place on the stock. Throws when the stock's sheet is not in the paper table. */
export function layLabels(page: LabelsPage, studio: Studio): readonly Leaf[] {
  const { stock, labels, title } = page;
  const sheet = sheetNamed(stock.sheet);
  if (!sheet)
    throw new Error(`label stock "${stock.name}" is on a sheet that the paper table does not have: ${stock.sheet}`);
  const factors = { x: studio.printer.across, y: studio.printer.along };
  const width = sheet.width * factors.x;
  const height = sheet.height * factors.y;
  const perSheet = stock.columns * stock.rows;
  const sheets = Math.max(1, Math.ceil(labels.length / perSheet));
  return Array.from({ length: sheets }, (_, i) => ({
    width,
    height,
    factors,
    ...(i === 0 ? { bookmark: title } : {}),
    draw: (pen: Pen) => {
      labels.slice(i * perSheet, (i + 1) * perSheet).forEach((label, k) => {
        const box = cellBox(stock, k, height);
        if (stock.cutLines) pen.rectangle(box, dashed(0.25));
        drawLabel(pen, label, box);
      });
    },
  }));
}

function cellBox(stock: LabelStock, index: number, sheetHeight: number): Box {
  const minX = stock.left + (index % stock.columns) * stock.columnPitch;
  const maxY = sheetHeight - stock.top - Math.floor(index / stock.columns) * stock.rowPitch;
  return { minX, minY: maxY - stock.height, maxX: minX + stock.width, maxY };
}

/** The number large above, the lines below it, the code at the right, the drawing in what is left. */
function drawLabel(pen: Pen, label: Label, box: Box): void {
  const [left, top] = [box.minX + INSET, box.maxY - INSET];
  const [width, height] = [widthOf(box) - 2 * INSET, heightOf(box) - 2 * INSET];
  const codeSide = label.code ? Math.min(height, width * 0.34, 24) : 0;
  if (label.code) drawCode(pen, label.code, box.maxX - INSET - codeSide, top, codeSide);
  const room = width - (codeSide > 0 ? codeSide + 2 : 0);
  const large = Math.min(9, height * 0.26);
  pen.text(label.number, left, top - large / 2 - 0.5, { height: large, bold: true, fit: room });
  let y = top - large - 2.5;
  const letters = Math.min(2.5, height * 0.09);
  for (const line of label.lines) {
    y -= letters * 0.5;
    pen.text(line, left, y, { height: letters, fit: room });
    y -= letters * 1.1;
  }
  const bottom = box.minY + INSET;
  if (label.drawing && y - bottom > 3) drawSmall(pen, label, { minX: left, minY: bottom, maxX: left + room, maxY: y });
}

/** The drawing as large as its room allows; it is a picture to recognise, so no scale is kept. */
function drawSmall(pen: Pen, { drawing }: Label, room: Box): void {
  // Its words would be too small to read, and the label has its own.
  const trace = { ...traceOf(drawing!), texts: [] };
  const box = joinBoxes(trace.lines.map((traced) => traced.box));
  if (isEmpty(box)) return;
  const scale = Math.min(widthOf(room) / Math.max(1e-9, widthOf(box)), heightOf(room) / Math.max(1e-9, heightOf(box)));
  const y = room.maxY - heightOf(box) * scale;
  drawTrace(pen, trace, box, placedAt(box.minX, box.minY, room.minX, y, scale));
}

/** A square code: dark modules side by side are one rectangle, so that no hairline of paper parts them. */
function drawCode(pen: Pen, code: readonly (readonly boolean[])[], left: number, top: number, side: number): void {
  const module = side / code.length;
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
}
