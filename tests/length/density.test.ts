import { describe, expect, it } from 'vitest';
import { parseDensity, printDensity } from '../../src/length/density.js';

describe('parseDensity', () => {
  // 1 lb/ft3 = 16.0185 kg/m3, from 0.45359237 kg and 0.3048 m.
  it.each([
    ['1 lb/ft3', 16.0185],
    ['15 kg/m3', 15],
    ['15 kg/m³', 15],
    ['15kg/m^3', 15],
    ['0.35 g/cm³', 350],
  ])('reads %s as %f kg/m³', (written, expected) => {
    expect(parseDensity(written, 'mm')).toEqual({ ok: true, value: expect.closeTo(expected, 4) });
  });

  // ASTM D6817 prints its minimum densities in both units, to a tenth of a kg/m³.
  it.each([
    ['0.70 lb/ft3', 11.2],
    ['0.90 lb/ft3', 14.4],
    ['1.15 lb/ft³', 18.4],
    ['1.35 lb/ft³', 21.6],
    ['1.80 lb/ft3', 28.8],
    ['2.40 lb/ft3', 38.4],
  ])('agrees with the two columns of ASTM D6817: %s is %d kg/m³', (written, expected) => {
    expect(parseDensity(written, 'in')).toEqual({ ok: true, value: expect.closeTo(expected, 1) });
  });

  it('does not take a weight for a density', () => {
    expect(parseDensity('2 lb', 'in')).toEqual({
      ok: false,
      what: '"lb" is not a unit of a density',
      remedy: 'write 15 kg/m3, 0.35 g/cm3 or 2 lb/ft3',
    });
  });
});

it("printDensity writes three figures in the shop's unit", () => {
  expect([printDensity(14.42, 'mm'), printDensity(14.42, 'in'), printDensity(448, 'in')]).toEqual([
    '14.4 kg/m³',
    '0.9 lb/ft³',
    '28 lb/ft³',
  ]);
});
