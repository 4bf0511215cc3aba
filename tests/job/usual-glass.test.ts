import { expect, test } from 'vitest';
import { USUAL_GLASS } from '../../src/job/usual-glass.js';
import { G_M2_PER_OZ_YD2 } from '../../src/length/areal.js';

/** Mixed epoxy, 4195 g to the gallon (polymercompositesinc.com, coverage and yield per gallon). */
const GRAMS_PER_GALLON = 4195;
const M2_PER_FT2 = 0.09290304;
const M2_PER_YD2 = 0.83612736;

// A supplier's wet-out without waste: a gallon wets 37.5 yd² of 4 oz, 25 yd² of 6 oz, 15 yd² of 10 oz
// (support.jamestowndistributors.com, 360052965954).
test.each([
  [4, 37.5],
  [6, 25],
  [10, 15],
])('the resin in a cloth of %i oz is what a gallon to %f square yards leaves', (ounces, yards) => {
  const perM2 = GRAMS_PER_GALLON / (yards * M2_PER_YD2);
  expect(Math.abs((USUAL_GLASS.resin * ounces * G_M2_PER_OZ_YD2) / perM2 - 1)).toBeLessThan(0.02);
});

// B. Niederer, "Estimating Epoxy Amounts", Epoxyworks: gallons = ft² (0.00085 oz + 0.0075), 15 % of it waste; the
// second term is three rolled coats.
test('sealing and hot coat together come near the three fill coats of an estimate for boats', () => {
  const coats = (0.0075 * GRAMS_PER_GALLON) / M2_PER_FT2 / 1.15;
  expect(Math.abs((USUAL_GLASS.sealer + USUAL_GLASS.hotCoat) / coats - 1)).toBeLessThan(0.15);
});

// The same article: 61 ft² of 6 oz take 0.77 gallons.
test('a job that says nothing takes the resin of the published example, less its waste', () => {
  const area = 61 * M2_PER_FT2;
  const { deck, resin, sealer, hotCoat } = USUAL_GLASS;
  const grams = area * (deck[0]! * resin + sealer + hotCoat);
  expect(Math.abs(grams / ((0.77 * GRAMS_PER_GALLON) / 1.15) - 1)).toBeLessThan(0.15);
});
