import { beforeAll, describe, expect, test } from 'vitest';
import type { ManifoldToplevel } from 'manifold-3d';
import { stretchOf } from '../../src/chamber/stretch.js';
import { chamberAcross } from '../../src/view/chamberAcross.js';
import { kernel } from '../oracle/kernel.js';
import { planOfSample } from '../sheet/sample.js';
import { areaWithin, chamberSlice } from './kernelOutline.js';

const straight = { origin: [0, 10], along: [1, 0], inward: [0, 1] } as const;
const box = {
  profile: [
    [100, 20],
    [200, 20],
    [200, 50],
    [100, 50],
  ],
  depth: [0, 30],
} as const;

/** Single precision of the kernel over boards of 4 m: of an area, mm², and of a place, mm. */
const KERNEL_AREA = 0.1;
const KERNEL_PLACE = 0.002;

let wasm: ManifoldToplevel;
beforeAll(async () => {
  wasm = await kernel();
});

describe('a chamber in a cross-section', () => {
  test('is as deep and as high as it is routed', () => {
    expect(chamberAcross(box, straight, 150)).toEqual([
      [10, 20],
      [40, 20],
      [40, 50],
      [10, 50],
    ]);
  });

  test('is not there before its beginning and behind its end', () => {
    expect(chamberAcross(box, straight, 99)).toBeUndefined();
    expect(chamberAcross(box, straight, 201)).toBeUndefined();
  });

  test('is cut askew where its face is flared, from its front to its end', () => {
    // A face turned by 30°: the plane x crosses depths t at s = (x + t/2) / cos 30°, and y = s·sin 30° + t·cos 30°.
    const [sin, cos] = [0.5, Math.sqrt(3) / 2];
    const flared = { origin: [0, 0], along: [cos, sin], inward: [-sin, cos] } as const;
    const ys = (x: number) => chamberAcross(box, flared, x)!.map(([y]) => y);
    const y = (x: number, t: number) => ((x + t * sin) / cos) * sin + t * cos;
    // At x = 150 the whole depth lies between s = 173.2 and s = 190.5.
    expect(Math.min(...ys(150))).toBeCloseTo(y(150, 0), 9);
    expect(Math.max(...ys(150))).toBeCloseTo(y(150, 30), 9);
    // At x = 170 the plane leaves the chamber's end, s = 200, at t = 2 · (200 · cos 30° − 170) = 6.41.
    expect(Math.max(...ys(170))).toBeCloseTo(y(170, 2 * (200 * cos - 170)), 9);
    // At x = 80 it enters through the front, s = 100, at t = 2 · (100 · cos 30° − 80) = 13.2.
    expect(Math.min(...ys(80))).toBeCloseTo(y(80, 2 * (100 * cos - 80)), 9);
    expect(Math.max(...ys(80))).toBeCloseTo(y(80, 30), 9);
  });

  // fell-short: its joints are flared, its chambers' corners eased. tarn-rescue: they are not flared.
  test.each(['fell-short', 'tarn-rescue'] as const)('of %s has area and reach as manifold-3d cuts it', (name) => {
    const { chambers, layup } = planOfSample(name);
    const faces = new Map(layup.rows.map(({ id, face }) => [id, face]));
    let cut = 0;
    chambers.forEach((chamber, i) => {
      const face = faces.get(chamber.row)!;
      const { from, to } = stretchOf(chamber.profile);
      // One place a chamber, another share of its length each: near the ends, in the corners, in the middle.
      const s = from + (0.002 + 0.996 * ((i % 8) / 7)) * (to - from);
      const deep = (chamber.depth[0] + chamber.depth[1]) / 2;
      const x = face.origin[0] + s * face.along[0] + deep * face.inward[0];
      const figure = chamberSlice(wasm, face, chamber, x);
      const corners = chamberAcross(chamber, face, x);
      expect(Math.abs((corners ? areaWithin(corners) : 0) - figure.area())).toBeLessThan(KERNEL_AREA);
      if (corners && figure.area() > 1) {
        cut++;
        const { min, max } = figure.bounds();
        const [ys, zs] = [0, 1].map((axis) => corners.map((corner) => corner[axis as 0 | 1]));
        expect(Math.abs(Math.min(...ys!) - min[1])).toBeLessThan(KERNEL_PLACE);
        expect(Math.abs(Math.max(...ys!) - max[1])).toBeLessThan(KERNEL_PLACE);
        expect(Math.abs(Math.min(...zs!) + max[0])).toBeLessThan(KERNEL_PLACE);
        expect(Math.abs(Math.max(...zs!) + min[0])).toBeLessThan(KERNEL_PLACE);
      }
      figure.delete();
    });
    expect(cut).toBeGreaterThan(40);
  });
});
