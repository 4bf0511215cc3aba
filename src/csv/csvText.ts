import Papa from 'papaparse';

/** Lines of cells as CSV (RFC 4180, but for the separator): lines by CRLF, a cell quoted where it must be. */
export function csvText(lines: readonly (readonly string[])[], separator = ','): string {
  return (
    Papa.unparse(
      lines.map((line) => [...line]),
      { delimiter: separator, newline: '\r\n' },
    ) + '\r\n'
  );
}

/**
 * What makes a spreadsheet compute (OWASP, CSV Injection): = + - @, tab, return and line feed at the beginning, their
 * full-width forms too; and the apostrophe that keeps it from doing so, so that every text comes back as it was.
 */
const GUARDED = /^[=+\-@\t\r\n＝＋－＠']/;

/** A text that a spreadsheet would take for a formula is led by an apostrophe. Numbers are no texts. */
export const guarded = (text: string): string => (GUARDED.test(text) ? `'${text}` : text);

/** Takes that apostrophe off again. */
export const unguarded = (cell: string): string =>
  cell.startsWith("'") && GUARDED.test(cell.slice(1)) ? cell.slice(1) : cell;
