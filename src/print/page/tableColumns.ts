import { wordsOf } from '../../length/wordsOf.js';
import { textOf, valueOf } from './cell.js';
import type { Measure } from '../pen/pen.js';
import type { TablePage } from '../../sheet/pages.js';

/** So that a word still fits into the width that was made for it, mm. */
const ROUNDING = 0.01;

/**
 * Widths of columns, mm, and how the table fits with them: every cell on one line, or wrapped between words, or not
 * even that.
 */
export interface Columns {
  readonly widths: readonly number[];
  readonly fits: 'unwrapped' | 'wrapped' | 'not';
}

/**
 * Widths of a table's columns, mm, that fill `room`. Each gets what its longest cell takes; what is left is spread by
 * width. Where that is more than there is, each gets what its longest word takes, and those with more to say share the
 * rest by how much more; numbers are never wrapped.
 */
export function columnWidths(
  page: Pick<TablePage, 'columns' | 'rows'>,
  letters: number,
  room: number,
  padding: number,
  tick: number,
  measure: Measure,
): Columns {
  const columns = page.columns.map((column, i) => {
    const widest = (words: readonly string[], bold: boolean) =>
      Math.max(0, ...words.map((word) => measure(word, bold) * letters));
    const total = column.total ? measure(column.total(sumOf(page, i)), true) * letters : 0;
    const cells = page.rows.flatMap((row) => (row.kind === 'row' ? textOf(row.cells[i] ?? '').split('\n') : []));
    const least = Math.max(widest(wordsOf(column.title), true), column.kind === 'tick' ? tick : 0, total);
    const natural = Math.max(least, widest(cells, i === 0));
    const wrapped = column.kind === 'text' ? Math.max(least, widest(cells.flatMap(wordsOf), i === 0)) : natural;
    return { natural: natural + padding + ROUNDING, least: wrapped + padding + ROUNDING };
  });
  const sum = columns.reduce((so, { natural }) => so + natural, 0);
  const least = columns.reduce((so, column) => so + column.least, 0);
  if (sum <= room) return { widths: columns.map(({ natural }) => (natural * room) / sum), fits: 'unwrapped' };
  if (least > room) return { widths: columns.map((column) => (column.least * room) / least), fits: 'not' };
  const share = (room - least) / (sum - least);
  return {
    widths: columns.map((column) => column.least + share * (column.natural - column.least)),
    fits: 'wrapped',
  };
}

function sumOf(page: Pick<TablePage, 'rows'>, column: number): number {
  return page.rows.reduce((sum, row) => sum + (row.kind === 'row' ? valueOf(row.cells[column]) : 0), 0);
}
