import Papa from 'papaparse';
import { expect, test } from 'vitest';
import { listText, readList } from '../../src/measured/list.js';

const measuresIn = (text: string) => {
  const read = readList(text, 'mine.csv');
  if ('remedy' in read) throw new Error(read.what);
  return read;
};

test('a line may hold several measures of one place; lines without any are passed over', () => {
  const read = measuresIn('at,side,thickness,width,chamber,deck\n600,,98,498,,\n600,150,,,,\n,,,,R2-05,16 mm\n');
  expect(read.map(({ line, measure }) => [line, Object.fromEntries(measure.item)])).toEqual([
    [2, { at: '600', thickness: '98' }],
    [2, { at: '600', width: '498' }],
    [4, { chamber: 'R2-05', deck: '16 mm' }],
  ]);
});

test('a list that was written reads as what it was written from, and a spreadsheet computes nothing of it', () => {
  const measures = measuresIn(
    'at;side;off;thickness;stage;weight\n24 in;-3 in;deck;2 7/8 in;;\n;;;;shaped;"9,5 kg"\n',
  ).map(({ measure }) => measure);
  const text = listText(measures);
  expect(measuresIn(text).map(({ measure }) => measure)).toEqual(measures);
  // OWASP, CSV Injection: no cell begins with one of these.
  expect(
    Papa.parse<string[]>(text)
      .data.flat()
      .filter((cell) => /^[=+\-@\t\r]/.test(cell)),
  ).toEqual([]);
});

test('a column that is no key of a measure is told, with what it may mean', () => {
  expect(readList('at,thikness\n1,2\n', 'mine.csv')).toMatchObject({
    where: 'mine.csv',
    what: 'measures have no column thikness',
    remedy: 'did you mean thickness?',
  });
  expect(readList('at,side\n1,2\n', 'mine.csv')).toMatchObject({ what: 'no column has anything that was measured' });
});
