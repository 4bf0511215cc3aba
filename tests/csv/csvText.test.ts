import { expect, test } from 'vitest';
import { csvText, guarded, unguarded } from '../../src/csv/csvText.js';

// OWASP, "CSV Injection": = + - @, tab, return, line feed, and the full-width forms of the first four.
const FORMULAS = ['=1+1', '+2', '-3 mm', '@SUM(A1)', '\t=1', '\r=1', '\n=1', '＝1', '＋1', '－1', '＠x'];

test('no text is left that a spreadsheet would compute, and each comes back as it was written', () => {
  for (const text of FORMULAS) {
    expect(guarded(text)).toBe(`'${text}`);
    expect(unguarded(guarded(text))).toBe(text);
  }
});

test('a text that begins with an apostrophe of its own comes back with it; any other text stays as it is', () => {
  for (const text of ["'=quoted", "'plain", "''", "'", 'R2-07', '3 15/16"', '']) {
    expect(unguarded(guarded(text))).toBe(text);
  }
  for (const text of ['R2-07', '3 15/16"', '', '1-2', '＃1']) expect(guarded(text)).toBe(text);
});

test('lines end with CRLF, and what holds the separator, a quote or a break is quoted (RFC 4180, 2)', () => {
  expect(csvText([['a', 'b "c", d'], ['e\nf']])).toBe('a,"b ""c"", d"\r\n"e\nf"\r\n');
  expect(csvText([['a;b', 'c,d']], ';')).toBe('"a;b";c,d\r\n');
});
