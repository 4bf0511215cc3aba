import { beforeAll, describe, expect, test } from 'vitest';
import type { ManifoldToplevel } from 'manifold-3d';
import { depthOf } from '../../src/layup/frame.js';
import { sliceMesh } from '../../src/view/slice.js';
import { kernel, solidOfMesh } from '../oracle/kernel.js';
import { planOfSample, SAMPLES } from '../sheet/sample.js';
import { smallPlan } from '../sheet/smallPlan.js';

/** Single precision of the kernel over boards of 4 m, as a share of a cut's area. */
const KERNEL_PRECISION = 1e-4;

let wasm: ManifoldToplevel;
beforeAll(async () => {
  wasm = await kernel();
});

function areaOf(points: readonly (readonly [number, number, number])[], [ax, ay]: readonly [number, number]): number {
  let twice = 0;
  points.forEach(([x0, y0, z0], i) => {
    const [x1, y1, z1] = points[(i + 1) % points.length]!;
    twice += (x0 * ax + y0 * ay) * z1 - (x1 * ax + y1 * ay) * z0;
  });
  return twice / 2;
}

describe('a cut through the board', () => {
  // manifold-3d slices across z, so the board is turned until the plane lies level.
  test.each(SAMPLES)('across %s has the area that manifold-3d finds', (name) => {
    const { board } = planOfSample(name);
    const solid = solidOfMesh(wasm, board.mesh).rotate([0, -90, 0]);
    for (const share of [0.05, 0.5, 0.95]) {
      const x = board.length * share;
      const mine = sliceMesh(board.mesh, { a: 1, b: 0, d: x }, [0, 1]);
      const sum = mine.reduce((total, { points }) => total + areaOf(points, [0, 1]), 0);
      // Turned by -90° about y, x becomes z.
      const area = solid.slice(x).area();
      expect(Math.abs(sum - area)).toBeLessThan(KERNEL_PRECISION * area);
    }
  });

  test.each(SAMPLES)('along every face of %s has the area that manifold-3d finds', (name) => {
    const { board, layup } = planOfSample(name);
    const solid = solidOfMesh(wasm, board.mesh);
    for (const { face } of layup.rows.filter(({ side }) => side !== 'L')) {
      const { origin, along, inward } = face;
      const d = inward[0] * origin[0] + inward[1] * origin[1];
      const mine = sliceMesh(board.mesh, { a: inward[0], b: inward[1], d }, along);
      const sum = mine.reduce((total, { points }) => total + areaOf(points, along), 0);
      // Columns of the matrix: where x, y and z go; what lay inward goes up.
      const turned = solid.transform([
        ...[along[0], 0, inward[0], 0],
        ...[along[1], 0, inward[1], 0],
        ...[0, 1, 0, 0],
        ...[0, 0, 0, 1],
      ] as never);
      const area = turned.slice(d).area();
      turned.delete();
      expect(Math.abs(sum - area)).toBeLessThan(KERNEL_PRECISION * area);
    }
  });

  test('through the vertices of the mesh is one closed line, not many', () => {
    const { mesh } = smallPlan().board;
    // Stations stand at x = 300 and 600; the keel and the deck's middle at y = 0. Worked out by hand: 300 mm wide, 60
    // mm thick.
    const across = sliceMesh(mesh, { a: 1, b: 0, d: 600 }, [0, 1]);
    expect(across).toHaveLength(1);
    // Half of the section by the shoelace formula over (0, 0) (120, 0) (150, 24) (120, 57) (0, 60): 7875 mm².
    expect(areaOf(across[0]!.points, [0, 1])).toBeCloseTo(2 * 7875, 6);
    expect(sliceMesh(mesh, { a: 0, b: 1, d: 0 }, [1, 0])).toHaveLength(1);
  });

  test('runs counter-clockwise as seen, whichever way it is looked at', () => {
    const { mesh } = smallPlan().board;
    for (const across of [
      [0, 1],
      [0, -1],
    ] as const) {
      const [loop] = sliceMesh(mesh, { a: 1, b: 0, d: 450 }, across);
      expect(areaOf(loop!.points, across)).toBeGreaterThan(0);
      loop!.patches.forEach((patch, i) => {
        const z = (loop!.points[i]![2] + loop!.points[(i + 1) % loop!.points.length]![2]) / 2;
        if (patch === 'deck') expect(z).toBeGreaterThan(50);
        if (patch === 'bottom') expect(z).toBeLessThan(10);
      });
    }
  });

  test('beside the board is nothing', () => {
    const { mesh } = smallPlan().board;
    expect(sliceMesh(mesh, { a: 1, b: 0, d: 1300 }, [0, 1])).toEqual([]);
    expect(depthOf(smallPlan().layup.rows[1]!.face, smallPlan().layup.joints[1]!).at).toBeCloseTo(0, 9);
  });
});
