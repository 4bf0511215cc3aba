import { expect, test } from 'vitest';
import { MATERIALS } from '../../src/job/materials.js';
import { G_M2_PER_OZ_YD2 } from '../../src/length/areal.js';
import { laminateOf, modulusOf } from '../../src/weigh/modulus.js';

const known = (name: string) => MATERIALS.find((material) => material.name === name)!;
const PSI = 0.00689476;

// USDA FPL-GTR-282, tables 5-3b and 5-5b, 12 % moisture, 10⁶ lbf/in²; footnote c adds 10 % for true bending.
test.each([
  ['western-red-cedar', 1.11],
  ['redwood', 1.34],
  ['redwood-young', 1.1],
  ['sitka-spruce', 1.57],
  ['basswood', 1.46],
  ['balsa', 0.49],
])('%s is as stiff as the Wood Handbook says: %f million psi and a tenth', (name, million) => {
  expect(modulusOf(known(name)) / (million * 1e6 * PSI * 1.1)).toBeCloseTo(1, 2);
});

// The relation for softwoods is from memory; it must come near the measured softwoods.
test.each(['western-red-cedar', 'redwood', 'redwood-young', 'sitka-spruce'])(
  'an unnamed wood as heavy as %s is about as stiff',
  (name) => {
    const like = modulusOf({ ...known(name), name: 'shop wood' }) / modulusOf(known(name));
    expect(Math.abs(like - 1)).toBeLessThan(0.16);
  },
);

// ASTM D6817: stress at 1 % of strain, kPa.
test.each([
  ['eps-12', 15],
  ['eps-15', 25],
  ['eps-19', 40],
  ['eps-22', 50],
  ['eps-29', 75],
  ['eps-39', 103],
])('%s yields 1 %% at %f kPa', (name, kPa) => {
  expect(modulusOf(known(name)) * 0.01 * 1000).toBeCloseTo(kPa, 6);
});

// 6 oz at 50:50 by weight: 0.0801 + 0.1769 = 0.257 mm; a laminate of half glass 14.5 GPa (rule from memory).
test('a layer of 6 oz is a quarter of a millimetre thick', () => {
  const { thickness, modulus } = laminateOf(6 * G_M2_PER_OZ_YD2, 1);
  expect(thickness).toBeCloseTo(0.257, 3);
  expect(modulus).toBe(14500);
});
