import { describe, expect, test } from 'vitest';
import { sectionPlaces } from '../../../src/sheet/section/sectionPlaces.js';
import { planOfSample, SAMPLES } from '../sample.js';

describe('sections', () => {
  test.each(SAMPLES)('of %s stand every foot or 250 mm, and at the thinnest wall of each row', (name) => {
    const plan = planOfSample(name);
    const places = sectionPlaces(plan);
    const step = plan.job.units === 'in' ? 304.8 : 250;
    for (let x = step; x < plan.board.length; x += step) {
      expect(places.some((place) => Math.abs(place.x - x) < 1e-6)).toBe(true);
    }
    for (const row of new Set(plan.chambers.map((chamber) => chamber.row))) {
      expect(places.some(({ thin }) => thin.some(({ chamber }) => chamber.row === row))).toBe(true);
    }
  });
});
