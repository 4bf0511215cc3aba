import type { Ink } from './ink.js';
import { hasInk } from './ink.js';
import { extremesOf, type Extremes } from './extremes.js';

/**
 * The part of a drawing that one page carries, mm in the drawing's frame, from its lower left corner. Whole
 * millimetres.
 */
export interface Window {
  /** From the nose, from 0. */
  readonly column: number;
  /** From below, from 0. */
  readonly row: number;
  readonly x: number;
  readonly y: number;
  readonly height: number;
}

/** What a page can carry, whole mm, and how far neighbours lie over one another. */
export interface Pane {
  readonly width: number;
  readonly height: number;
  readonly overlap: number;
}

/**
 * The windows that carry a drawing with the fewest pages for this pane: columns of equal width from nose to tail, each
 * at the height where its part of the drawing lies, so that they step up with the rocker. All shifts of the columns
 * along the board by whole millimetres are tried; of the best, the one that leaves the same space at both ends is
 * taken. Blank pages are left out.
 *
 * @param mostRows how many rows of pages a column may take.
 * @returns undefined when no shift does with that many rows.
 */
export function tile(ink: Ink, pane: Pane, mostRows = Infinity): readonly Window[] | undefined {
  const extremes = extremesOf(ink, pane.width);
  const length = ink.low.length;
  if (length === 0) return [];
  const step = pane.width - pane.overlap;
  let best: { shift: number; count: number; off: number } | undefined;
  for (let shift = 0; shift < step; shift++) {
    const columns = columnCount(length + shift, pane);
    const count = pagesAt(ink, extremes, pane, shift, columns, mostRows);
    const spare = columns * step + pane.overlap - length;
    const off = Math.abs(2 * shift - spare);
    if (!best || count < best.count || (count === best.count && off < best.off)) best = { shift, count, off };
  }
  return best && Number.isFinite(best.count) ? windowsAt(ink, extremes, pane, best.shift) : undefined;
}

/** How many columns of the pane cover a length, mm. */
export const columnCount = (length: number, pane: Pane): number =>
  Math.max(1, Math.ceil((length - pane.overlap) / (pane.width - pane.overlap)));

/** How many rows of the pane cover a height, mm. */
export const rowCount = (height: number, pane: Pane): number =>
  Math.max(1, Math.ceil((height - pane.overlap) / (pane.height - pane.overlap)));

function pagesAt(ink: Ink, extremes: Extremes, pane: Pane, shift: number, columns: number, mostRows: number): number {
  let pages = 0;
  for (let column = 0; column < columns; column++) {
    const span = spanOf(ink, extremes, pane, shift, column);
    if (!span) continue;
    const rows = rowCount(span.high - span.low, pane);
    if (rows > mostRows) return Infinity;
    pages += rows < 3 ? rows : rowsWithInk(ink, pane, span, rows).length;
  }
  return pages;
}

function windowsAt(ink: Ink, extremes: Extremes, pane: Pane, shift: number): Window[] {
  const windows: Window[] = [];
  let before: number | undefined;
  for (let column = 0; column < columnCount(ink.low.length + shift, pane); column++) {
    const span = spanOf(ink, extremes, pane, shift, column);
    if (!span) {
      before = undefined;
      continue;
    }
    const rows = rowCount(span.high - span.low, pane);
    // A page stays level with the one before as long as its part of the drawing fits there.
    const level = rows === 1 && before !== undefined && before <= span.low && span.high <= before + pane.height;
    const y = level ? before! : lowestRow(pane, span, rows);
    before = rows === 1 ? y : undefined;
    for (const row of rows < 3 ? [0, 1].slice(0, rows) : rowsWithInk(ink, pane, span, rows)) {
      windows.push({ column, row, x: span.x, y: y + row * (pane.height - pane.overlap), height: pane.height });
    }
  }
  return windows;
}

interface Span {
  readonly x: number;
  readonly low: number;
  readonly high: number;
}

/** What of the drawing lies in a column, in whole millimetres, or undefined when nothing does. */
function spanOf(ink: Ink, extremes: Extremes, pane: Pane, shift: number, column: number): Span | undefined {
  const first = column * (pane.width - pane.overlap) - shift;
  const low = extremes.lowest(first);
  const high = extremes.highest(first);
  return low > high ? undefined : { x: ink.from + first, low: Math.floor(low), high: Math.ceil(high) };
}

/** Where the lowest of a stack of rows begins, so that the drawing lies in the middle of the stack. */
function lowestRow(pane: Pane, span: Span, rows: number): number {
  const stack = rows * (pane.height - pane.overlap) + pane.overlap;
  return span.low - Math.floor((stack - (span.high - span.low)) / 2);
}

function rowsWithInk(ink: Ink, pane: Pane, span: Span, rows: number): number[] {
  const y = lowestRow(pane, span, rows);
  return Array.from({ length: rows }, (_, row) => row).filter((row) => {
    const bottom = y + row * (pane.height - pane.overlap);
    return hasInk(ink, { minX: span.x, minY: bottom, maxX: span.x + pane.width, maxY: bottom + pane.height });
  });
}
