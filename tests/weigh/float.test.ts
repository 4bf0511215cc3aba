import { expect, test } from 'vitest';
import { KG_PER_POUND, M3_PER_CUBIC_FOOT } from '../../src/length/units.js';
import { floatOf } from '../../src/weigh/float.js';

// ASTM D6817, net lift of expanded foam in fresh water, lb/ft³: minimum density, lift (geofoamusa.com/?p=9377).
test.each([
  [0.7, 61.7],
  [0.9, 61.5],
  [1.15, 61.3],
  [1.35, 61.1],
  [1.8, 60.6],
  [2.4, 60.0],
])('a cubic foot of foam of %f lb carries %f lb in fresh water', (weight, lift) => {
  const { fresh } = floatOf(M3_PER_CUBIC_FOOT * 1000, weight * KG_PER_POUND);
  // The table takes water at 62.4 lb/ft³; at 15 °C it is 62.37. It is rounded to 0.1.
  expect(Math.abs(fresh.carries / KG_PER_POUND - lift)).toBeLessThan(0.03 + 0.05);
});

// ITTC 7.5-02-01-03: 999.1026 kg/m³ fresh, 1026.021 kg/m³ at 35.165 g/kg of salt, both at 15 °C.
test('a litre carries 0.999 kg in fresh water and 1.026 kg in the sea', () => {
  const { fresh, sea } = floatOf(1, 0);
  expect(fresh.carries).toBeCloseTo(0.999103, 5);
  expect(sea.carries).toBeCloseTo(1.026021, 5);
});

test('a rider takes off what is spare, down to sinking', () => {
  const { fresh } = floatOf(100, 10, 95);
  expect(fresh.spare).toBeCloseTo(-5.09, 2);
  expect(fresh.under).toBeGreaterThan(1);
  expect(floatOf(100, 10).fresh.spare).toBeUndefined();
});
