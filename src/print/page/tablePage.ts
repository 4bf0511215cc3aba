import { valueOf } from './cell.js';
import { documentLeaf, documentSheet, headOf, type Room } from './documentSheet.js';
import type { Leaf, PrintContext } from './leaf.js';
import { wide } from '../trace/line.js';
import type { Pen } from '../pen/pen.js';
import type { TablePage, TableRow as Row } from '../../sheet/pages.js';
import { columnWidths, type Columns } from './tableColumns.js';
import {
  drawHeader,
  drawRow,
  headerHeight,
  heightOfRow,
  LINE_PITCH,
  PADDING,
  TICK,
  type Setting,
} from './tableRows.js';
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

/**
 * The pages of a list. Its header stands on each page; columns with a total are added up on each page, and at the end
 * in all.
 */
export function layTable(page: TablePage, context: PrintContext): readonly Leaf[] {
  const setting = settingFor(page, context);
  const notes = notesOf(page, setting, context);
  const pages = laidInto(page, setting, context);
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

const notesOf = ({ notes = [] }: TablePage, { lying }: Lain, context: PrintContext): string[] => {
  const { room } = documentSheet(context, lying);
  return notes.flatMap((note) => wrap(note, room.width, 2.5, false, context.measure));
};

function laidInto(page: TablePage, setting: Lain, context: PrintContext): readonly Row[][] {
  const { room } = documentSheet(context, setting.lying);
  const notes = notesOf(page, setting, context).length;
  return paginate(page, setting, room, notes * 2.5 * LINE_PITCH + (notes > 0 ? 3 : 0), context);
}

interface Lain extends Setting {
  readonly lying: boolean;
}

/**
 * The largest letters with which every cell stands on one line; of those no smaller, the way that takes the fewest
 * pages. Where cells must be wrapped, with letters as large as can be.
 */
function settingFor(page: TablePage, context: PrintContext): Lain {
  const settings = WAYS.map(({ lying, letters }) => {
    const { room } = documentSheet(context, lying);
    return { lying, letters, ...columnWidths(page, letters, room.width, 2 * PADDING, TICK, context.measure) };
  });
  const [, , lying, small] = settings as [Sized, Sized, Sized, Sized];
  const unwrapped = settings.find(({ fits, letters }) => fits === 'unwrapped' && letters > small.letters);
  const least = unwrapped ?? (lying.fits === 'not' ? small : lying);
  const others = settings.filter(({ fits, letters }) => fits !== 'not' && letters === least.letters);
  const pagesOf = (setting: Lain): number => laidInto(page, setting, context).length;
  return others.reduce((best, next) => (pagesOf(next) < pagesOf(best) ? next : best), least);
}

type Sized = Lain & Columns;

/** Fills page after page; a heading stays with the row below it. */
function paginate(
  page: TablePage,
  setting: Setting,
  room: Room,
  notesHeight: number,
  context: PrintContext,
): readonly Row[][] {
  const totals = page.columns.some((column) => column.total) ? 2 * (setting.letters * LINE_PITCH + 2) : 0;
  const header = headerHeight(page, setting, context);
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
