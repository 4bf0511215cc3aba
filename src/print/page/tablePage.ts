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
 * Ways to set a table, the best first: heights of letters (ISO 3098-1:2015), the larger where its width allows, mm; how
 * many columns of the page it runs down beside each other; the last that a table of many columns needs.
 */
const WAYS = [
  { lying: false, beside: 1, letters: 3.5 },
  { lying: false, beside: 2, letters: 3.5 },
  { lying: true, beside: 2, letters: 3.5 },
  { lying: false, beside: 1, letters: 2.5 },
  { lying: false, beside: 2, letters: 2.5 },
  { lying: true, beside: 1, letters: 2.5 },
  { lying: true, beside: 2, letters: 2.5 },
  { lying: true, beside: 1, letters: 1.8 },
] as const;

/** Between two columns of a page, mm. */
const GUTTER = 8;

/**
 * The pages of a list. Its header stands on each page, and where a narrow one runs down a page twice, over both;
 * columns with a total are added up on each page, and at the end in all.
 */
export function layTable(page: TablePage, context: PrintContext): readonly Leaf[] {
  const setting = settingFor(page, context);
  const notes = notesOf(page, setting, context);
  const strips = laidInto(page, setting, context);
  const pages = Array.from({ length: pagesFor(strips, setting) }, (_, i) =>
    strips.slice(i * setting.beside, (i + 1) * setting.beside),
  );
  return pages.map((strips, i) => {
    return documentLeaf(context, setting.lying, headOf(page, i === 0, context), (pen, inner) => {
      let top = inner.top;
      if (i === 0 && notes.length > 0) {
        for (const note of notes) {
          top -= 2.5 * LINE_PITCH;
          pen.text(note, inner.left, top + 2.5, { height: 2.5 });
        }
        top -= 3;
      }
      pen.tagged('Table', () => {
        strips.forEach((rows, k) => {
          const strip = stripOf(inner, setting, k);
          let y = top;
          const line = (draw: () => number): void => pen.tagged('TR', () => (y = draw()));
          line(() => drawHeader(pen, strip.left, y, page, setting, context));
          for (const row of rows) line(() => drawRow(pen, strip, y, row, page, setting, context));
          if (!hasTotals(page)) return;
          line(() => drawTotal(pen, strip, y, context.words.pageTotal, rows, page, setting));
          if (i === pages.length - 1 && pages.length > 1)
            line(() => drawTotal(pen, strip, y, context.words.total, page.rows, page, setting));
        });
      });
    });
  });
}

const hasTotals = ({ columns }: TablePage): boolean => columns.some((column) => column.total);

const pagesFor = (strips: readonly unknown[], { beside }: Lain): number => Math.ceil(strips.length / beside);

/** One of the columns of a page, from the left. */
function stripOf(room: Room, { beside }: Pick<Lain, 'beside'>, index = 0): Room {
  const width = (room.width - (beside - 1) * GUTTER) / beside;
  return { ...room, left: room.left + index * (width + GUTTER), width };
}

const notesOf = ({ notes = [] }: TablePage, { lying }: Lain, context: PrintContext): string[] => {
  const { room } = documentSheet(context, lying);
  return notes.flatMap((note) => wrap(note, room.width, 2.5, false, context.measure));
};

function laidInto(page: TablePage, setting: Lain, context: PrintContext): readonly Row[][] {
  const { room } = documentSheet(context, setting.lying);
  const notes = notesOf(page, setting, context).length;
  return inStrips(page, setting, room, notes * 2.5 * LINE_PITCH + (notes > 0 ? 3 : 0), context);
}

interface Lain extends Setting {
  readonly lying: boolean;
  readonly beside: 1 | 2;
}

/**
 * The largest letters with which every cell stands on one line; of those no smaller, the way that takes the fewest
 * pages. Where cells must be wrapped, with letters as large as can be, across the whole page. What is added up page by
 * page is not set in two columns.
 */
function settingFor(page: TablePage, context: PrintContext): Lain {
  const settings = WAYS.map((way): Sized => {
    const { width } = stripOf(documentSheet(context, way.lying).room, way);
    const columns = columnWidths(page, way.letters, width, 2 * PADDING, TICK, context.measure);
    const isBroken = way.beside > 1 && (columns.fits !== 'unwrapped' || hasTotals(page));
    return { ...way, ...columns, ...(isBroken && { fits: 'not' }) };
  });
  const small = settings.at(-1)!;
  const wrapped = settings.findLast(({ fits, letters }) => fits === 'wrapped' && letters > small.letters);
  const unwrapped = settings.find(({ fits, letters }) => fits === 'unwrapped' && letters > small.letters);
  const least = unwrapped ?? wrapped ?? small;
  const others = settings.filter(({ fits, letters }) => fits !== 'not' && letters === least.letters);
  const pagesOf = (setting: Lain): number => pagesFor(laidInto(page, setting, context), setting);
  return others.reduce((best, next) => (pagesOf(next) < pagesOf(best) ? next : best), least);
}

type Sized = Lain & Columns;

/**
 * Fills one column of a page after the other; a heading stays with the row below it, and at the end what is added up on
 * the page with the sum of all.
 */
function inStrips(
  page: TablePage,
  setting: Lain,
  room: Room,
  notesHeight: number,
  context: PrintContext,
): readonly Row[][] {
  const total = hasTotals(page) ? setting.letters * LINE_PITCH + 2 : 0;
  const full = room.height - headerHeight(page, setting, context) - total;
  const roomIn = (strip: number): number => full - (strip < setting.beside ? notesHeight : 0);
  const strips: Row[][] = [[]];
  let left = roomIn(0);
  page.rows.forEach((row, i) => {
    const next = page.rows[i + 1];
    const height = heightOfRow(row, page, setting, context);
    const isWithNext = row.kind === 'heading' && next !== undefined;
    // The last row has the sum of all below it, where there is more than one page.
    const below = isWithNext ? heightOfRow(next, page, setting, context) : next || strips.length === 1 ? 0 : total;
    if (height + below > left && strips.at(-1)!.length > 0) {
      strips.push([]);
      left = roomIn(strips.length - 1);
    }
    strips.at(-1)!.push(row);
    left -= height;
  });
  return strips;
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
