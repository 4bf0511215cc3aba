import { describe, expect, it } from 'vitest';
import { formOf, type Form } from '../../../src/scan/form/form.js';
import type { Triangles } from '../../../src/scan/triangles.js';

/**
 * The Wigley hull, whose half-breadth is B/2 (1 − (2x/L)²)(1 − (z/T)²): W. C. S. Wigley, "A comparison of experiment
 * and calculated wave-profiles and wave-resistances for a form having parabolic waterlines", Proc. Royal Society A 144
 * (1934); the formula from memory. Here with its mirror image over the waterline: a body of two such hulls.
 */
const [L, B, T] = [3000, 500, 60];
const halfBreadth = (x: number, z: number) => (B / 2) * (1 - ((2 * x) / L - 1) ** 2) * (1 - (z / T) ** 2);

/** The hull by a table of points, nose at x = 0, its waterline at z = 0. */
function wigley(along: number, around: number): Triangles {
  const positions: number[] = [];
  const triangles: number[] = [];
  for (let i = 0; i <= along; i++)
    for (let k = 0; k < 2 * around; k++) {
      const x = (L * (1 - Math.cos((Math.PI * i) / along))) / 2;
      const turn = (Math.PI * k) / around;
      const z = -T * Math.cos(turn);
      positions.push(x, Math.sign(Math.sin(turn)) * halfBreadth(x, z), z);
    }
  const at = (i: number, k: number) => i * 2 * around + (k % (2 * around));
  for (let i = 0; i < along; i++)
    for (let k = 0; k < 2 * around; k++)
      triangles.push(at(i, k), at(i, k + 1), at(i + 1, k + 1), at(i, k), at(i + 1, k + 1), at(i + 1, k));
  return { positions: Float64Array.from(positions), triangles: Uint32Array.from(triangles) };
}

describe('sections of the Wigley hull, given as a mesh, are those of its closed form', () => {
  const mesh = wigley(400, 90);
  const form = formOf(mesh, mesh.triangles.length) as Form;

  it('its length, and its keel as straight as it is', () => {
    expect(form.length).toBeCloseTo(L, 6);
    for (const { x, bottom, thickness } of form.stations.filter(({ x }) => x > 10 && x < L - 10)) {
      expect(bottom, `at ${x}`).toBeLessThan(0.05);
      expect(Math.abs(thickness - 2 * T), `at ${x}`).toBeLessThan(0.05);
    }
  });

  it('half-breadths within a tenth of a millimetre, at every station and on both sides', () => {
    for (const { x, half } of form.stations)
      for (const each of half) expect(Math.abs(each - halfBreadth(x, 0)), `at ${x}`).toBeLessThan(0.1);
  });

  it('every point of every section on the hull within a tenth of a millimetre', () => {
    for (const { x, sections } of form.stations.filter(({ x }) => x > 40 && x < L - 40))
      for (const points of sections)
        for (const { y, z } of points) {
          // Square to the section: its sides lean by the slope of the half-breadth.
          const lean = (halfBreadth(x, z - T + 0.01) - halfBreadth(x, z - T - 0.01)) / 0.02;
          expect(Math.abs(y - halfBreadth(x, z - T)) / Math.hypot(1, lean), `at ${x}, ${z}`).toBeLessThan(0.1);
        }
  });

  it('areas of sections: 2/3 of breadth and depth, twice', () => {
    for (const { x, sections } of form.stations.filter(({ x }) => x > 40 && x < L - 40)) {
      const area = sections.reduce(
        (sum, points) =>
          sum + points.slice(1).reduce((s, p, i) => s + ((p.y + points[i]!.y) * (p.z - points[i]!.z)) / 2, 0),
        0,
      );
      expect(Math.abs(area / ((4 / 3) * (2 * halfBreadth(x, 0)) * T) - 1), `at ${x}`).toBeLessThan(0.002);
    }
  });
});
