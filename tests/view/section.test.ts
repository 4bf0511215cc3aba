import { beforeAll, describe, expect, test } from 'vitest';
import type { ManifoldToplevel } from 'manifold-3d';
import { PATCHES } from '../../src/board/mesh.js';
import { chambersInPlan } from '../../src/view/chamberInPlan.js';
import { isSymmetric, sectionAt } from '../../src/view/section.js';
import { wallsInPlane } from '../../src/view/wallsInPlane.js';
import { sectionPlaces } from '../../src/sheet/section/sectionPlaces.js';
import { kernel } from '../oracle/kernel.js';
import { planOfSample, SAMPLES } from '../sheet/sample.js';
import { smallPlan } from '../sheet/smallPlan.js';
import { areaWithin, boardAcross } from './kernelOutline.js';

/** Single precision of the kernel over boards of 4 m: as a share of an area, and of a place, mm. */
const KERNEL_AREA = 1e-4;
const KERNEL_PLACE = 0.005;

let wasm: ManifoldToplevel;
beforeAll(async () => {
  wasm = await kernel();
});

describe('sections', () => {
  test.each(SAMPLES)('of %s have the area, the place and the parts that manifold-3d cuts', (name) => {
    const plan = planOfSample(name);
    for (const share of [0.01, 0.3, 0.7, 0.99]) {
      const x = share * plan.board.length;
      const { loops } = sectionAt(plan, x);
      const figure = boardAcross(wasm, plan, x);
      // A swallow's tail is two.
      expect(loops).toHaveLength(figure.numContour());
      const area = loops.reduce((sum, { points }) => sum + areaWithin(points), 0);
      expect(Math.abs(area - figure.area())).toBeLessThan(KERNEL_AREA * figure.area());
      const { min, max } = figure.bounds();
      const [ys, zs] = [0, 1].map((axis) => loops.flatMap(({ points }) => points.map((point) => point[axis as 0 | 1])));
      expect(Math.abs(Math.min(...ys!) - min[1])).toBeLessThan(KERNEL_PLACE);
      expect(Math.abs(Math.max(...ys!) - max[1])).toBeLessThan(KERNEL_PLACE);
      expect(Math.abs(Math.min(...zs!) + max[0])).toBeLessThan(KERNEL_PLACE);
      expect(Math.abs(Math.max(...zs!) + min[0])).toBeLessThan(KERNEL_PLACE);
    }
  });

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
    const walls = wallsInPlane(section.loops, right!.corners, PATCHES);
    expect(walls.bottom!.distance).toBeCloseTo(low, 6);
    // The lower edge falls by 2 mm over the chamber, so half way it is 1 mm under 12.
    expect(walls.bottom!.distance).toBeCloseTo(11, 1);
  });

  test.each(SAMPLES)('of %s show no wall thinner than the proved one', (name) => {
    const plan = planOfSample(name);
    const middles = chambersInPlan(plan.layup.rows, plan.chambers).map(({ middle }) => middle[0]);
    let looked = 0;
    for (const x of [...middles, ...sectionPlaces(plan).map((place) => place.x)]) {
      const section = sectionAt(plan, x);
      for (const { chamber, corners } of section.chambers) {
        const walls = wallsInPlane(section.loops, corners, PATCHES);
        for (const patch of PATCHES) {
          if (!walls[patch]) continue;
          looked++;
          // Within a plane the way to the surface is at least as long as in space; the proof takes the mesh's chord
          // error off.
          expect(walls[patch].distance).toBeGreaterThanOrEqual(chamber.wall[patch] - 1e-6);
        }
      }
    }
    expect(looked).toBeGreaterThan(3 * plan.chambers.length);
  });
});
