import { describe, expect, test } from 'vitest';
import { G_M2_PER_OZ_YD2, parseArealWeight, printArealWeight } from '../../src/length/areal.js';

// Ounce of 28.349523125 g, square yard of 0.83612736 m²: exact definitions.
test('an ounce to the square yard is 33.9057 g/m²', () => {
  expect(G_M2_PER_OZ_YD2).toBeCloseTo(28.349523125 / 0.83612736, 10);
});

// Cloths by name, from the same definitions: 4, 6, 7.5 and 10 oz are 135.6, 203.4, 254.3 and 339.1 g/m².
test.each([
  ['4 oz', 135.6],
  ['6 oz/yd2', 203.4],
  ['7.5 oz', 254.3],
  ['10 oz/yd²', 339.1],
  ['200 g/m2', 200],
  ['0.2 kg', undefined],
  ['six', undefined],
])('%s', (written, expected) => {
  const parsed = parseArealWeight(written, 'mm');
  if (expected === undefined) expect(parsed).toMatchObject({ ok: false, remedy: expect.stringContaining('6 oz') });
  else expect(parsed).toMatchObject({ ok: true, value: expect.closeTo(expected, 1) });
});

describe('a bare number', () => {
  test('is in ounces in an inch shop', () => {
    expect(parseArealWeight(8, 'in')).toMatchObject({ ok: true, value: expect.closeTo(271.2, 1) });
  });
  test('is in g/m² in a metric shop', () => expect(parseArealWeight(160, 'mm')).toEqual({ ok: true, value: 160 }));
});

test('is written as cloth is named', () => {
  expect(printArealWeight(6 * G_M2_PER_OZ_YD2, 'in')).toBe('6 oz/yd²');
  expect(printArealWeight(203.43, 'mm')).toBe('203 g/m²');
});
