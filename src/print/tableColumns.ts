import { textOf, valueOf } from './cell.js';
import type { Measure } from './pen.js';
import type { TablePage } from './set.js';

/**
 * Widths of a table's columns, mm, that fill `room`. Each gets what its longest cell takes; what is left is spread by width.
 * Where that is more than there is, number and tick columns keep theirs and text columns share the rest, to be wrapped.
 */
export function columnWidths(
  page: TablePage,
  letters: number,
  room: number,
  padding: number,
  tick: number,
  measure: Measure,
): { readonly widths: readonly number[]; readonly fits: boolean } {
  const natural = page.columns.map((column, i) => {
    const longestWord = Math.max(...column.title.split(/\s+/).map((word) => measure(word, true) * letters));
    const total = column.total ? measure(column.total(sumOf(page, i)), true) * letters : 0;
    let width = Math.max(longestWord, column.kind === 'tick' ? tick : 0, total);
    for (const row of page.rows) {
      if (row.kind === 'row' && row.cells[i] !== undefined) {
        for (const line of textOf(row.cells[i]).split('\n')) width = Math.max(width, measure(line, i === 0) * letters);
      }
    }
    return width + padding;
  });
  const sum = natural.reduce((a, b) => a + b, 0);
  if (sum <= room) return { widths: natural.map((width) => (width * room) / sum), fits: true };
  const isText = page.columns.map((column) => column.kind === 'text');
  const fixed = natural.reduce((a, width, i) => a + (isText[i] ? 0 : width), 0);
  const texts = sum - fixed;
  const forTexts = room - fixed;
  if (texts === 0 || forTexts < texts / 6) return { widths: natural.map((width) => (width * room) / sum), fits: false };
  return { widths: natural.map((width, i) => (isText[i] ? (width * forTexts) / texts : width)), fits: false };
}

function sumOf(page: TablePage, column: number): number {
  return page.rows.reduce((sum, row) => sum + (row.kind === 'row' ? valueOf(row.cells[column]) : 0), 0);
}
