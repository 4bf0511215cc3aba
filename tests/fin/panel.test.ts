import { describe, expect, test } from 'vitest';
import { G_M2_PER_OZ_YD2 } from '../../src/length/areal.js';
import { laminateDensity, layersFor, layerThickness, panelThickness, resinShare } from '../../src/fin/panel.js';

const glass = { fibreDensity: 2540, resinDensity: 1150 };

describe('a panel of cloth laid up flat', () => {
  test('has the thickness that another formula finds from shares by weight', () => {
    // R. Geerts, "Calculating Laminate Thickness", Epoxyworks: t = W/ρf + W (XR/XF)/ρR.
    const panel = { cloth: 203, layers: 1, fibre: 0.42, ...glass };
    const share = resinShare(panel);
    expect(layerThickness(panel)).toBeCloseTo(203 / 2540 + (203 * share) / 1150, 9);
  });

  test('of a prepreg is 0.143 mm a layer, as a published example says', () => {
    // compositecalculator.com, total areal weight method: 225 g/m² with 67.78 % fibre by weight, 1.79 and 1.25 g/cm³.
    const byWeight = 0.6778;
    const fibre = byWeight / 1790 / (byWeight / 1790 + (1 - byWeight) / 1250);
    const panel = { cloth: 225 * byWeight, fibre, fibreDensity: 1790 };
    expect(layerThickness(panel).toFixed(3)).toBe('0.143');
  });

  test('of ten layers of 8 oz, laid up by hand, lies between what tables of hand lay-up say of 6 and of 10 oz', () => {
    // West System, "Determining laminate thickness", average of several layers laid up by hand: 6 oz 0.010 in,
    // 10 oz 0.016 in.
    const thickness = panelThickness({ cloth: 8 * G_M2_PER_OZ_YD2, layers: 10, fibre: 0.38, ...glass });
    expect(thickness).toBeGreaterThan(10 * 0.01 * 25.4);
    expect(thickness).toBeLessThan(10 * 0.016 * 25.4);
  });

  test('has as many layers as a wanted thickness takes, and one fewer would be too thin', () => {
    const panel = { cloth: 271, fibre: 0.4, ...glass };
    const layers = layersFor(3.2, panel);
    expect(layers * layerThickness(panel)).toBeGreaterThanOrEqual(3.2);
    expect((layers - 1) * layerThickness(panel)).toBeLessThan(3.2);
    expect(layersFor(12 * layerThickness(panel), panel)).toBe(12);
  });

  test('weighs its cloth and its resin', () => {
    const panel = { cloth: 271, layers: 10, fibre: 0.4, ...glass };
    const byArea = (panelThickness(panel) / 1000) * laminateDensity(panel);
    expect(byArea).toBeCloseTo((10 * 271 * (1 + resinShare(panel))) / 1000, 9);
  });
});
