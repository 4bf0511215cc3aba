import type { Cell } from './set.js';

/** Tells a spreadsheet that the file is UTF-8. */
const BYTE_ORDER_MARK = '\ufeff';

/**
 * Rows as CSV (RFC 4180): fields parted by commas, lines by CRLF, a field quoted where it holds a comma, a quote or a line
 * break, quotes doubled. UTF-8 with a byte order mark, so that a spreadsheet opens it right away. A number goes out as it is; a
 * text that a spreadsheet would take for a formula is led by an apostrophe.
 *
 * @param rows the header first. A cell `{ value, text }` goes out as its value; true and false as 1 and 0.
 */
export function csvOf(rows: readonly (readonly Cell[])[]): string {
  return BYTE_ORDER_MARK + rows.map((row) => row.map(field).join(',') + '\r\n').join('');
}

function field(cell: Cell): string {
  if (typeof cell === 'boolean') return cell ? '1' : '0';
  if (typeof cell === 'object') return field(cell.value);
  if (typeof cell === 'number') {
    if (!Number.isFinite(cell)) throw new Error('a list has a number that is not finite');
    return String(cell);
  }
  const text = guarded(cell);
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

/** What makes a spreadsheet compute (OWASP, CSV Injection): = + - @, tab and return at the beginning. Their full-width forms too. */
const FORMULA = /^[=+\-@\t\r\n＝＋－＠]/;

const guarded = (text: string): string => (FORMULA.test(text) ? `'${text}` : text);
