import { G_M2_PER_OZ_YD2 } from '../length/areal.js';
import type { GlassSpec, LaminatingSpec } from './spec/finish.js';

/**
 * Glass of a job that says nothing: one layer of 6 oz a side and a plain hot coat. Wet-out by weight equals the
 * cloth's, the rule of the laminators' suppliers ("resin weight = cloth weight"). The coats are common practice, no
 * source; together they are a tenth over what the three rolled coats of an estimate for boats leave (0.0075 gal/ft²
 * with 15 % of waste; B. Niederer, "Estimating Epoxy Amounts", Epoxyworks).
 */
export const USUAL_GLASS: GlassSpec = {
  deck: [6 * G_M2_PER_OZ_YD2],
  bottom: [6 * G_M2_PER_OZ_YD2],
  lap: 50,
  resin: 1,
  sealer: 100,
  hotCoat: 225,
  hotCoatCloth: 0,
};

/** E-glass and cured epoxy, kg/m³; the usual handbook values, from memory. */
export const GLASS_AND_EPOXY = { fibreDensity: 2540, resinDensity: 1150 } as const;

/**
 * How a job that says nothing works it: cloth 30 in wide, 20 minutes in the pot; common practice, no source. Waste of
 * 15 %: B. Niederer, "Estimating Epoxy Amounts", Epoxyworks.
 */
export const USUAL_LAMINATING: LaminatingSpec = { first: 'bottom', clothWidth: 762, potLife: 20, loss: 0.15 };
