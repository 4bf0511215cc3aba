import { csvText, guarded } from '../csv/csvText.js';
import type { JobMark } from '../sheet/pages.js';
import { isoDate } from './paper/day.js';
import type { Cell } from '../sheet/pages.js';

/** What parts the columns, and what marks the decimals. */
export interface CsvForm {
  readonly separator: ',' | ';';
  readonly decimal: '.' | ',';
}

/** By how they are asked for: `;` is what spreadsheets expect where decimals are marked by a comma. */
export const csvForms: Readonly<Record<string, CsvForm>> = {
  ',': { separator: ',', decimal: '.' },
  ';': { separator: ';', decimal: ',' },
  ';.': { separator: ';', decimal: '.' },
};

/** Tells a spreadsheet that the file is UTF-8. */
const BYTE_ORDER_MARK = '\ufeff';
/**
 * The last columns of every list: what it is of. In columns, not in a line above the header, so that they survive
 * sorting and every reader.
 */
const MARKS = ['job', 'date', 'revision'];

/**
 * Rows as CSV (RFC 4180, but for the separator): lines by CRLF, a field quoted where it must be, quotes doubled. UTF-8
 * with a byte order mark, so that a spreadsheet opens it right away. A text that a spreadsheet would take for a formula
 * is led by an apostrophe; numbers are not.
 *
 * @param rows the header first. A cell `{ value, text }` goes out as its value; true and false as 1 and 0.
 * @param of the job, its revision and the day: they stand at the end of every line
 */
export function csvOf(
  rows: readonly (readonly Cell[])[],
  of?: { readonly mark: JobMark; readonly date: Date },
  { separator, decimal }: CsvForm = csvForms[',']!,
): string {
  const marks = of ? [of.mark.job, isoDate(of.date), of.mark.revision ?? ''] : [];
  const whole = rows.map((row, i) => [...row, ...(of ? (i === 0 ? MARKS : marks) : [])]);
  const data = whole.map((row) => row.map((cell) => field(cell, decimal)));
  return BYTE_ORDER_MARK + csvText(data, separator);
}

function field(cell: Cell, decimal: string): string {
  if (typeof cell === 'boolean') return cell ? '1' : '0';
  if (typeof cell === 'object') return field(cell.value, decimal);
  if (typeof cell === 'number') {
    if (!Number.isFinite(cell)) throw new Error('a list has a number that is not finite');
    return String(cell).replace('.', decimal);
  }
  return guarded(cell);
}
