import { describe, expect, test } from 'vitest';
import { isSymmetric, sectionAt, wallsInPlane } from '../../../src/view/section.js';
import { sectionPlaces } from '../../../src/sheet/section/sectionPlaces.js';
import { planOfSample, SAMPLES } from '../sample.js';
import { smallPlan } from '../smallPlan.js';

describe('sections', () => {
  test('show the walls that can be worked out by hand', () => {
    const plan = smallPlan();
    // At 600 mm the bottom is flat at z = 0, so the bottom skin is the height of the chamber's lower edge there; no
    // chamber at the web.
    expect(sectionAt(plan, 600).chambers).toEqual([]);
    const section = sectionAt(plan, 750);
    expect(section.chambers.map(({ chamber }) => chamber.id)).toEqual(['L1-03', 'R1-03']);
    expect(isSymmetric(section)).toBe(true);
    const [, right] = section.chambers;
    const low = Math.min(...right!.corners.map(([, z]) => z));
    const walls = wallsInPlane(section, right!.corners, right!.row);
    expect(walls.bottom!.distance).toBeCloseTo(low, 6);
    // The lower edge falls by 2 mm over the chamber, so half way it is 1 mm under 12.
    expect(walls.bottom!.distance).toBeCloseTo(11, 1);
  });

  test.each(SAMPLES)('of %s show no wall thinner than the proved one', (name) => {
    const plan = planOfSample(name);
    for (const { x } of sectionPlaces(plan)) {
      const section = sectionAt(plan, x);
      for (const { chamber, row, corners } of section.chambers) {
        for (const [patch, gap] of Object.entries(wallsInPlane(section, corners, row))) {
          // The proof takes the mesh's chord error off.
          expect(gap.distance).toBeGreaterThanOrEqual(chamber.wall[patch as 'deck'] - 1e-6);
        }
      }
    }
  });

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
