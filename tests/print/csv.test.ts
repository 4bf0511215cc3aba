import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { csvForms, csvOf } from '../../src/print/csv.js';
import { AWKWARD } from './printed.js';

describe('CSV', () => {
  it('is written as RFC 4180 has it, led by a byte order mark', () => {
    // RFC 4180, 2: CRLF at line ends; 6 and 7: fields with commas, quotes, breaks quoted, quotes doubled.
    expect(
      csvOf([
        ['number', 'note'],
        ['R2-07', 'a "b", c'],
      ]),
    ).toBe('\ufeffnumber,note\r\nR2-07,"a ""b"", c"\r\n');
  });

  it('leads a text that a spreadsheet would compute with an apostrophe, and leaves numbers alone', () => {
    expect(csvOf([['=1+1', '+1', '-1', '@x', '\t=1', -2.5, { value: 0.5, text: '1/2' }, true]])).toBe(
      "\ufeff'=1+1,'+1,'-1,'@x,'\t=1,-2.5,0.5,1\r\n",
    );
  });

  it('reads back as it was in an independent reader', () => {
    const rows = [
      ['R2-07', AWKWARD, 'two\nlines'],
      ['R2-08', '3 15/16"', ' spaces '],
    ];
    expect(Papa.parse<string[]>(csvOf(rows), { skipEmptyLines: true }).data).toEqual(rows);
  });

  it('says job, date and revision at the end of every line, guarded like every text', () => {
    const of = { mark: { job: '=1+1', revision: 'B' }, date: new Date('2026-05-01') };
    expect(
      csvOf(
        [
          ['block', 'length mm'],
          ['R2-07', 180.5],
        ],
        of,
      ),
    ).toBe("\ufeffblock,length mm,job,date,revision\r\nR2-07,180.5,'=1+1,2026-05-01,B\r\n");
  });

  it('parts by semicolons and marks decimals by commas where a spreadsheet expects that, numbers below nothing too', () => {
    const rows = [['a; b', -2.5, 'c, d', '1.5']];
    expect(csvOf(rows, undefined, csvForms[';'])).toBe('\ufeff"a; b";-2,5;c, d;1.5\r\n');
    expect(csvOf(rows, undefined, csvForms[';.'])).toBe('\ufeff"a; b";-2.5;c, d;1.5\r\n');
    expect(Papa.parse(csvOf(rows, undefined, csvForms[';']), { skipEmptyLines: true }).data).toEqual([
      ['a; b', '-2,5', 'c, d', '1.5'],
    ]);
  });

  it('refuses a number that is none', () => {
    expect(() => csvOf([[NaN]])).toThrow('not finite');
  });
});
