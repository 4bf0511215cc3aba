import { textOf } from './cell.js';
import type { Room } from './documentSheet.js';
import type { PrintContext } from './leaf.js';
import { narrow, wide } from '../trace/line.js';
import type { Pen } from '../pen/pen.js';
import type { TablePage, TableRow as Row } from '../../sheet/pages.js';
import { wrap } from '../pen/wrap.js';

/** A table to be set, on pages of its own or among text. */
export type Table = Pick<TablePage, 'columns' | 'rows'>;

/** Letters and widths of columns, mm. */
export interface Setting {
  readonly letters: number;
  readonly widths: readonly number[];
}

export const LINE_PITCH = 1.75;
export const PADDING = 1.6;
/** Side of a box to tick, mm: large enough for a carpenter's pencil (common practice, no source). */
export const TICK = 5;
/** Between boxes of two rows, mm: the pencil's line does not run from one into the other. */
const TICKS_APART = 2;

const wrapped = (
  text: string,
  width: number,
  letters: number,
  bold: boolean,
  context: PrintContext,
): readonly string[] => wrap(text, width - 2 * PADDING, letters, bold, context.measure);

const rowHeightOf = (lines: number, letters: number, ticks: boolean): number =>
  Math.max(ticks ? TICK + TICKS_APART : 0, lines * letters * LINE_PITCH + 1.2);

export function heightOfRow(row: Row, page: Table, { letters, widths }: Setting, context: PrintContext): number {
  if (row.kind === 'heading') return letters * LINE_PITCH + 4;
  const lines = row.cells.map((cell, i) => wrapped(textOf(cell), widths[i]!, letters, i === 0, context).length);
  return rowHeightOf(
    Math.max(1, ...lines),
    letters,
    page.columns.some((column) => column.kind === 'tick'),
  );
}

/** How tall the titles of the columns are, mm. */
export function headerHeight(page: Table, setting: Setting, context: PrintContext): number {
  const lines = headerLines(page, setting, context).map((column) => column.length);
  return Math.max(...lines) * setting.letters * LINE_PITCH + 2;
}

function headerLines(page: Table, { letters, widths }: Setting, context: PrintContext): readonly (readonly string[])[] {
  return page.columns.map((column, i) => wrapped(column.title, widths[i]!, letters, true, context));
}

/** @returns the height at which it ends */
export function drawHeader(
  pen: Pen,
  left: number,
  top: number,
  page: Table,
  setting: Setting,
  context: PrintContext,
): number {
  const lines = headerLines(page, setting, context);
  const pitch = setting.letters * LINE_PITCH;
  const height = headerHeight(page, setting, context);
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

/** @returns the height at which it ends */
export function drawRow(
  pen: Pen,
  room: Room,
  top: number,
  row: Row,
  page: Table,
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
