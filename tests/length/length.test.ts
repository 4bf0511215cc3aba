import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseLength, printLength } from '../../src/length/length.js';

const mm = (written: string | number, units: 'mm' | 'in' = 'mm'): number => {
  const parsed = parseLength(written, units);
  if (!parsed.ok) throw new Error(parsed.what);
  return parsed.value;
};

// An inch is 25.4 mm exactly: international yard and pound agreement of 1959 (from memory); the same figure stands
// behind the inch and millimetre columns of ASME Y14.1 (11 in = 279.4 mm, 36 in = 914.4 mm).
describe('parseLength', () => {
  it.each([
    ['19 mm', 19],
    ['19mm', 19],
    ['1.9 cm', 19],
    ['2 m', 2000],
    ['0.75 in', 19.05],
    ['.75 in', 19.05],
    ['3/4 in', 19.05],
    ['3/4"', 19.05],
    ['½ in', 12.7],
    ['4½"', 114.3],
    ['4 1/2"', 114.3],
    ['4-1/2 in', 114.3],
    ['1 ⅜ inches', 34.925],
    ['11 in', 279.4],
    ['3 ft', 914.4],
    ['11 ft 4 in', 3454.4],
    ['11\' 4 1/2"', 3467.1],
    ["11'4", 3454.4],
    ['11\'-4"', 3454.4],
    ['11′ 4″', 3454.4],
    ['  2  M ', 2000],
    ['-3 in', -76.2],
    ['−3 in', -76.2],
  ])('reads %s as %f mm', (written, expected) => {
    expect(mm(written)).toBeCloseTo(expected, 9);
  });

  it('takes a bare number in the unit of the file', () => {
    expect([mm('12', 'mm'), mm('12', 'in'), mm(0.75, 'in'), mm('3/4', 'in')]).toEqual(
      [12, 304.8, 19.05, 19.05].map((v) => expect.closeTo(v, 9)),
    );
  });

  it.each([
    ['12 lb', '"lb" is not a unit of a length'],
    ['12 inn', '"inn" is not a unit of a length'],
    ['twelve', '"twelve" is not a length'],
    ['', 'nothing is written where a length should be'],
    ['-', 'nothing is written where a length should be'],
    ['1,5 mm', '"1,5 mm" has a comma in the number'],
    ['3/0 in', '"3/0 in" is not a length'],
    ['11 ft 14 in', '"11 ft 14 in" does not add up'],
    ['11.5 ft 4 in', '"11.5 ft 4 in" does not add up'],
    ['4 in 11 ft', '"4 in 11 ft" is more than one length'],
    ['1 m 20 cm', '"1 m 20 cm" is more than one length'],
    ['1 2 mm', '"1 2 mm" is more than one length'],
    ['1e3 mm', '"e3" is not a unit of a length'],
    ['5 mm -', '"5 mm -" is not a length'],
    [Infinity, 'Infinity is not a length'],
    [NaN, 'NaN is not a length'],
  ])('says what is wrong with %s, and what would be right', (written, what) => {
    expect(parseLength(written, 'mm')).toMatchObject({ ok: false, what, remedy: expect.stringMatching(/\d/) });
  });

  it.each([
    ['37/8', 'in', 'it is 4 5/8; 3 7/8 may be meant', 'write 4 5/8 or 3 7/8'],
    ['37/8 in', 'mm', 'it is 4 5/8; 3 7/8 may be meant', 'write 4 5/8 or 3 7/8'],
    ['111/4"', 'in', 'it is 27 3/4; 11 1/4 may be meant', 'write 27 3/4 or 11 1/4'],
    ['3 9/8 in', 'in', 'it is 4 1/8', 'write 4 1/8'],
    ['16/8 in', 'in', 'it is 2; 1 6/8 may be meant', 'write 2 or 1 6/8'],
    ['11.4 ft', 'in', 'is 11 ft 4 13/16 in; 11 ft 4 in may be meant', 'write 11 ft 4 13/16 in or 11 ft 4 in'],
    ['3 7/8 mm', 'mm', 'a fraction of a mm', 'write 3 7/8 in where that is meant, or a decimal: 3.88 mm'],
    ['3 7/8', 'mm', 'a fraction of a mm', 'write 3 7/8 in where that is meant, or a decimal: 3.88 mm'],
    ['3 7 8', 'in', 'more than one length', 'write 3 7/8, where that is meant'],
    ['3 78 in', 'in', 'more than one length', 'write 3 7/8 in, where that is meant'],
    ['3.7/8 in', 'in', 'is not a length', 'write a fraction behind a space: 3 7/8'],
    ['3 7\\8', 'in', 'is not a length', 'write a fraction behind a space: 3 7/8'],
    ['10 1/166 in', 'in', 'has 166 below its line', 'write halves, quarters, and so on to 64ths: 3 7/8 in'],
    ['3,5', 'in', 'has a comma in the number', 'write a decimal point: 1.5, not 1,5'],
  ] as const)('asks about %s in a job in %s, which can be read in two ways', (written, units, what, remedy) => {
    expect(parseLength(written, units)).toEqual({ ok: false, what: expect.stringContaining(what) as string, remedy });
  });

  it('takes what can be read in one way only', () => {
    expect([mm('3-7/8 in'), mm('3 7/8in'), mm("11'4"), mm('11.25 ft'), mm('2.0 ft')]).toEqual(
      [98.425, 98.425, 3454.4, 3429, 609.6].map((v) => expect.closeTo(v, 6)),
    );
  });

  it('gives a value or a finding for any text, never an exception, and never not-a-number', () => {
    const pieces = fc.constantFrom('1', '3/4', '½', ' ', 'ft', "'", '"', 'in', 'mm', '-', '.', '/', 'kg', ',', '12');
    const texts = fc.oneof(
      fc.string(),
      fc.array(pieces, { maxLength: 8 }).map((some) => some.join('')),
    );
    fc.assert(
      fc.property(texts, fc.constantFrom('mm' as const, 'in' as const), (text, units) => {
        const parsed = parseLength(text, units);
        return parsed.ok ? Number.isFinite(parsed.value) : parsed.what !== '' && parsed.remedy !== '';
      }),
    );
  });
});

describe('printLength', () => {
  it.each([
    [19, 'mm', '19 mm'],
    [19.05, 'mm', '19.1 mm'],
    [19.04, 'mm', '19 mm'],
    [-0.04, 'mm', '0 mm'],
    [0, 'in', '0 in'],
    [114.3, 'in', '4 1/2 in'],
    [3.175, 'in', '1/8 in'],
    [1.5875, 'in', '1/16 in'],
    [-4.7625, 'in', '-3/16 in'],
    [304.7, 'in', '12 in'],
  ] as const)('writes %f mm in %s as %s', (value, units, expected) => {
    expect(printLength(value, units)).toBe(expected);
  });

  it('counts inches up into feet when asked, carrying what rounds up', () => {
    expect([3454.4, 3467.1, 3657.6, 3657.5, 25.4].map((value) => printLength(value, 'in', 'feet'))).toEqual([
      '11 ft 4 in',
      '11 ft 4 1/2 in',
      '12 ft',
      '12 ft',
      '1 in',
    ]);
  });

  it('is read back to within half of the smallest mark', () => {
    const units = fc.constantFrom('mm' as const, 'in' as const);
    fc.assert(
      fc.property(fc.double({ min: -9000, max: 9000, noNaN: true }), units, fc.boolean(), (value, unit, feet) => {
        const halfMark = unit === 'mm' ? 0.05 : 25.4 / 32;
        return Math.abs(mm(printLength(value, unit, feet ? 'feet' : undefined), unit) - value) <= halfMark + 1e-9;
      }),
    );
  });
});

it('one place is one number, however it is written', () => {
  expect([mm('1 ft 8 in'), mm('20 in'), mm('508 mm'), mm('50.8 cm')]).toEqual([508, 508, 508, 508]);
});
