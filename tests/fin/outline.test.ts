import { describe, expect, test } from 'vitest';
import { areaAndCentre, chordAt, contourOf, outlineOf } from '../../src/fin/outline.js';
import { kernel } from '../oracle/kernel.js';
import { builtFin } from './fins.js';

const k = await kernel();
/** So many strips stand for an area: their middles lie within a hundredth of a millimetre of its own. */
const STRIPS = 150;
const measures = (rake: number, leading: number, trailing: number) =>
  ({ outline: { rake, leading, trailing } }) as const;

describe('the outline of a fin', () => {
  test('with straight edges is a trapezoid', () => {
    const outline = outlineOf(builtFin({ base: 200, tip: 80, depth: 240 }, measures(50, 0.5, 0.5)));
    const { area, x, y } = areaAndCentre(outline);
    expect(area).toBeCloseTo(((200 + 80) / 2) * 240, 6);
    // Centre of a trapezoid over its base: h (b + 2 t) / 3 (b + t); along it, on the line between the middles.
    const high = (240 * (200 + 2 * 80)) / (3 * (200 + 80));
    expect(y).toBeCloseTo(high, 6);
    expect(x).toBeCloseTo(100 + (50 * high) / 240, 6);
  });

  test('with the fullness of an ellipse and hardly a tip is half an ellipse', () => {
    const tip = 1e-6;
    const outline = outlineOf(builtFin({ base: 200, tip, depth: 180 }, measures(0, Math.SQRT1_2, Math.SQRT1_2)));
    const { area, x, y } = areaAndCentre(outline);
    const exact = (Math.PI * 100 * 180) / 2;
    expect(Math.abs(area / exact - 1)).toBeLessThan(2e-4);
    expect(x).toBeCloseTo(100, 6);
    expect(Math.abs(y / ((4 * 180) / (3 * Math.PI)) - 1)).toBeLessThan(2e-4);
    for (const height of [20, 90, 150, 179])
      expect(chordAt(outline, height).length).toBeCloseTo(200 * Math.sqrt(1 - (height / 180) ** 2), 1);
  });

  test.each([
    ['raked', 60, 0.72, 0.4],
    ['hollow behind', 110, 0.78, 0.3],
    ['leaning forward', -40, 0.6, 0.7],
  ])('%s has the area and centre of manifold-3d, and no chord is turned round', (_, rake, leading, trailing) => {
    const outline = outlineOf(builtFin({}, measures(rake, leading, trailing)));
    const section = new k.CrossSection([contourOf(outline).map(([x, y]): [number, number] => [x, y])]);
    const { area, x, y } = areaAndCentre(outline);
    expect(area / section.area()).toBeCloseTo(1, 6);
    // Its middle by the areas of strips across it.
    const strips = (axis: 0 | 1) => {
      const { min, max } = section.bounds();
      const step = (max[axis] - min[axis]) / STRIPS;
      let moment = 0;
      for (let at = min[axis]; at < max[axis] - step / 2; at += step) {
        const strip = k.CrossSection.square(axis === 0 ? [step, 2000] : [2000, step]);
        const placed = strip.translate(axis === 0 ? [at, -1000] : [-1000, at]);
        moment += section.intersect(placed).area() * (at + step / 2);
      }
      return moment / section.area();
    };
    expect(x).toBeCloseTo(strips(0), 1);
    expect(y).toBeCloseTo(strips(1), 1);
    for (let height = 0; height <= 241; height += 5) expect(chordAt(outline, height).length).toBeGreaterThan(0);
  });

  test('is fuller where its edges are', () => {
    const areas = [0.3, 0.45, 0.5, 0.6, 0.8].map(
      (full) => areaAndCentre(outlineOf(builtFin({}, measures(60, full, full)))).area,
    );
    expect([...areas].sort((a, b) => a - b)).toEqual(areas);
    expect(new Set(areas).size).toBe(areas.length);
  });
});
