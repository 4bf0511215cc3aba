import { describe, expect, it } from 'vitest';
import { parseWeight, printWeight } from '../../src/length/weight.js';

// A pound avoirdupois is 0.45359237 kg exactly: international yard and pound agreement of 1959 (from memory).
describe('parseWeight', () => {
  it.each([
    ['17.2 kg', 17.2],
    ['450 g', 0.45],
    ['1 lb', 0.45359237],
    ['38 lbs', 17.23651006],
    ['16 oz', 0.45359237],
    ['37 lb 6 oz', 16.95301482875],
    ['37½ lb', 17.009713875],
  ])('reads %s as %f kg', (written, expected) => {
    expect(parseWeight(written, 'mm')).toEqual({ ok: true, value: expect.closeTo(expected, 10) });
  });

  it('takes a bare number in kilograms in a metric shop and in pounds in an inch shop', () => {
    expect([parseWeight(2, 'mm'), parseWeight(2, 'in')]).toEqual([
      { ok: true, value: 2 },
      { ok: true, value: 0.90718474 },
    ]);
  });

  it('does not take a length for a weight', () => {
    expect(parseWeight('3 in', 'in')).toEqual({
      ok: false,
      what: '"in" is not a unit of a weight',
      remedy: 'write 17.2 kg, 450 g, 38 lb or 37 lb 6 oz',
    });
  });
});

describe('printWeight', () => {
  it.each([
    [17.236, 'mm', '17.24 kg'],
    [0.1432, 'mm', '143 g'],
    [0.9996, 'mm', '1.00 kg'],
    [0, 'mm', '0 g'],
    [17.23651006, 'in', '38.0 lb'],
    [0.15, 'in', '5.3 oz'],
    [0.4535, 'in', '1.0 lb'],
    [-0.00001, 'in', '0.0 oz'],
  ] as const)('writes %f kg in a shop of %s as %s', (kg, units, expected) => {
    expect(printWeight(kg, units)).toBe(expected);
  });
});
