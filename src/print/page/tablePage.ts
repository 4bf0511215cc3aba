import { textOf, valueOf } from './cell.js';
import { documentLeaf, documentSheet, headOf, type Room } from './documentSheet.js';
import type { Leaf, PrintContext } from './leaf.js';
import { narrow, wide } from '../trace/line.js';
import type { Pen } from '../pen/pen.js';
import type { TablePage, TableRow as Row } from '../../sheet/pages.js';
import { columnWidths, type Columns } from './tableColumns.js';
import { wrap } from '../pen/wrap.js';

/**
 * Ways to set a table, the best first: heights of letters (ISO 3098-1:2015), the larger where its width allows, mm; the
 * last that a table of many columns needs.
 */
const WAYS = [
  { lying: false, letters: 3.5 },
  { lying: false, letters: 2.5 },
  { lying: true, letters: 2.5 },
  { lying: true, letters: 1.8 },
] as const;
const LINE_PITCH = 1.75;
const PADDING = 1.6;
/** Side of a box to tick, mm: large enough for a carpenter's pencil (common practice, no source). */
const TICK = 5;

/**
 * The pages of a list. Its header stands on each page; columns with a total are added up on each page, and at the end
 * in all.
 */
export function layTable(page: TablePage, context: PrintContext): readonly Leaf[] {
  const setting = settingFor(page, context);
  const { room } = documentSheet(context, setting.lying);
  const notes = (page.notes ?? []).flatMap((note) => wrap(note, room.width, 2.5, false, context.measure));
  const pages = paginate(page, setting, room, notes.length * 2.5 * LINE_PITCH + (notes.length > 0 ? 3 : 0), context);
  return pages.map((rows, i) => {
    return documentLeaf(context, setting.lying, headOf(page, i === 0, context), (pen, inner) => {
      let y = inner.top;
      if (i === 0 && notes.length > 0) {
        for (const note of notes) {
          y -= 2.5 * LINE_PITCH;
          pen.text(note, inner.left, y + 2.5, { height: 2.5 });
        }
        y -= 3;
      }
      const line = (draw: () => number): void => pen.tagged('TR', () => (y = draw()));
      pen.tagged('Table', () => {
        line(() => drawHeader(pen, inner.left, y, page, setting, context));
        for (const row of rows) line(() => drawRow(pen, inner, y, row, page, setting, context));
        if (!page.columns.some((column) => column.total)) return;
        line(() => drawTotal(pen, inner, y, context.words.pageTotal, rows, page, setting));
        if (i === pages.length - 1 && pages.length > 1)
          line(() => drawTotal(pen, inner, y, context.words.total, page.rows, page, setting));
      });
    });
  });
}

interface Setting {
  readonly lying: boolean;
  readonly letters: number;
  readonly widths: readonly number[];
}

/**
 * The first way in which every cell stands on one line; else, with letters as large as can be, one that wraps cells
 * between words.
 */
function settingFor(page: TablePage, context: PrintContext): Setting {
  const settings = WAYS.map(({ lying, letters }) => {
    const { room } = documentSheet(context, lying);
    return { lying, letters, ...columnWidths(page, letters, room.width, 2 * PADDING, TICK, context.measure) };
  });
  const [, , lying, small] = settings as [Setting, Setting, Sized, Sized];
  const unwrapped = settings.find(({ fits, letters }) => fits === 'unwrapped' && letters > small.letters);
  return unwrapped ?? (lying.fits === 'not' ? small : lying);
}

type Sized = Setting & Columns;

const wrapped = (
  text: string,
  width: number,
  letters: number,
  bold: boolean,
  context: PrintContext,
): readonly string[] => wrap(text, width - 2 * PADDING, letters, bold, context.measure);

const rowHeightOf = (lines: number, letters: number, ticks: boolean): number =>
  Math.max(ticks ? TICK + 3 : 0, lines * letters * LINE_PITCH + 1.2);

function heightOfRow(row: Row, page: TablePage, { letters, widths }: Setting, context: PrintContext): number {
  if (row.kind === 'heading') return letters * LINE_PITCH + 4;
  const lines = row.cells.map((cell, i) => wrapped(textOf(cell), widths[i]!, letters, i === 0, context).length);
  return rowHeightOf(
    Math.max(1, ...lines),
    letters,
    page.columns.some((column) => column.kind === 'tick'),
  );
}

function headerLines(
  page: TablePage,
  { letters, widths }: Setting,
  context: PrintContext,
): readonly (readonly string[])[] {
  return page.columns.map((column, i) => wrapped(column.title, widths[i]!, letters, true, context));
}

/** Fills page after page; a heading stays with the row below it. */
function paginate(
  page: TablePage,
  setting: Setting,
  room: Room,
  notesHeight: number,
  context: PrintContext,
): readonly Row[][] {
  const totals = page.columns.some((column) => column.total) ? 2 * (setting.letters * LINE_PITCH + 2) : 0;
  const header =
    Math.max(...headerLines(page, setting, context).map((lines) => lines.length)) * setting.letters * LINE_PITCH + 2;
  const pages: Row[][] = [[]];
  let left = room.height - header - totals - notesHeight;
  const full = room.height - header - totals;
  page.rows.forEach((row, i) => {
    const next = page.rows[i + 1];
    const height = heightOfRow(row, page, setting, context);
    const needed = height + (row.kind === 'heading' && next ? heightOfRow(next, page, setting, context) : 0);
    if (needed > left && pages[pages.length - 1]!.length > 0) {
      pages.push([]);
      left = full;
    }
    pages[pages.length - 1]!.push(row);
    left -= height;
  });
  return pages;
}

function drawHeader(
  pen: Pen,
  left: number,
  top: number,
  page: TablePage,
  setting: Setting,
  context: PrintContext,
): number {
  const lines = headerLines(page, setting, context);
  const pitch = setting.letters * LINE_PITCH;
  const height = Math.max(...lines.map((column) => column.length)) * pitch + 2;
  let x = left;
  page.columns.forEach((column, i) => {
    const width = setting.widths[i]!;
    pen.tagged('TH', () =>
      lines[i]!.forEach((line, k) => {
        const y = top - height + 1 + (lines[i]!.length - k - 0.5) * pitch;
        const { at, align } = placeIn(column.kind, x, width);
        pen.text(line, at, y, { height: setting.letters, bold: true, align });
      }),
    );
    x += width;
  });
  pen.line([left, top - height, x, top - height], wide);
  return top - height;
}

function drawRow(
  pen: Pen,
  room: Room,
  top: number,
  row: Row,
  page: TablePage,
  setting: Setting,
  context: PrintContext,
): number {
  const height = heightOfRow(row, page, setting, context);
  const total = setting.widths.reduce((sum, width) => sum + width, 0);
  if (row.kind === 'heading') {
    const how = { height: setting.letters, bold: true, fit: total };
    pen.tagged('TH', () => pen.text(row.text, room.left + PADDING, top - height + 1.5 + setting.letters / 2, how));
    pen.line([room.left, top - height, room.left + total, top - height], wide);
    return top - height;
  }
  let x = room.left;
  page.columns.forEach((column, i) => {
    const width = setting.widths[i]!;
    const cell = row.cells[i] ?? '';
    pen.tagged('TD', () => {
      if (column.kind === 'tick') return drawTick(pen, x + width / 2, top - height / 2, cell === true);
      const lines = wrapped(textOf(cell), width, setting.letters, i === 0, context);
      const { at, align } = placeIn(column.kind, x, width);
      lines.forEach((line, k) => {
        const y = top - height / 2 + ((lines.length - 1) / 2 - k) * setting.letters * LINE_PITCH;
        pen.text(line, at, y, { height: setting.letters, align, bold: i === 0 });
      });
    });
    x += width;
  });
  pen.line([room.left, top - height, x, top - height], narrow);
  return top - height;
}

function drawTotal(
  pen: Pen,
  room: Room,
  top: number,
  label: string,
  rows: readonly Row[],
  page: TablePage,
  setting: Setting,
): number {
  const height = setting.letters * LINE_PITCH + 2;
  let x = room.left;
  const y = top - height / 2;
  const firstTotal = page.columns.findIndex((column) => column.total);
  const labelRoom = setting.widths.slice(0, firstTotal).reduce((sum, width) => sum + width, 0);
  const how = { height: setting.letters, bold: true, fit: Math.max(labelRoom - PADDING, 12) };
  pen.tagged('TH', () => pen.text(label, room.left + PADDING, y, how));
  page.columns.forEach((column, i) => {
    const width = setting.widths[i]!;
    if (column.total) {
      const sum = rows.reduce((so, row) => so + (row.kind === 'row' ? valueOf(row.cells[i]) : 0), 0);
      const total = column.total(sum);
      pen.tagged('TD', () =>
        pen.text(total, x + width - PADDING, y, { height: setting.letters, bold: true, align: 'right' }),
      );
    }
    x += width;
  });
  pen.line([room.left, top - height, x, top - height], wide);
  return top - height;
}

function drawTick(pen: Pen, x: number, y: number, ticked: boolean): void {
  const half = TICK / 2;
  pen.rectangle({ minX: x - half, minY: y - half, maxX: x + half, maxY: y + half }, wide);
  if (ticked) pen.line([x - 1.7, y, x - 0.5, y - 1.5, x + 1.9, y + 1.8], { width: 0.7, dashes: [] });
}

function placeIn(
  kind: 'text' | 'number' | 'tick',
  x: number,
  width: number,
): { at: number; align: 'left' | 'centre' | 'right' } {
  if (kind === 'number') return { at: x + width - PADDING, align: 'right' };
  if (kind === 'tick') return { at: x + width / 2, align: 'centre' };
  return { at: x + PADDING, align: 'left' };
}
