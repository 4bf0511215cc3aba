import { beforeAll, expect, test } from 'vitest';
import type { ManifoldToplevel } from 'manifold-3d';
import { faceLineAt } from '../../src/view/faceLine.js';
import { kernel, solidOfMesh } from '../oracle/kernel.js';
import { planOfSample, SAMPLES } from '../sheet/sample.js';
import { smallPlan } from '../sheet/smallPlan.js';
import { bandAlong } from './kernelOutline.js';

/** Single precision of the kernel over boards of 4 m, with the width of the band, mm. */
const KERNEL_PLACE = 0.005;

let wasm: ManifoldToplevel;
beforeAll(async () => {
  wasm = await kernel();
});

test('the face line on the centreline passes through the measured bottom and deck', () => {
  const { board, job } = planOfSample('mere-prone');
  const face = { id: '', on: 'in', piece: '', joint: '', origin: [0, 0], along: [1, 0], inward: [0, 1] } as const;
  const line = faceLineAt(board, face);
  for (const { x, bottom, thickness } of job.board.profile.slice(1, -1)) {
    const heights = line.heightsAt(x)!;
    expect(heights.bottom).toBeCloseTo(bottom, 6);
    expect(heights.deck).toBeCloseTo(bottom + thickness, 6);
  }
  expect(line.heightsAt(-1)).toBeUndefined();
});

test('the face line of a board drawn by hand begins where its section is as wide as the joint stands out', () => {
  const { board, layup } = smallPlan();
  const line = faceLineAt(board, layup.rows[1]!.face);
  // The joint stands 40 mm out; nose and tail are blunt, 2 · 45 mm wide.
  expect([line.from, line.to]).toEqual([expect.closeTo(0, 9), expect.closeTo(1200, 9)]);
  // At 600 mm the deck falls from 60 on the centreline to 57 at 120: at 40 it is 59.
  expect(line.heightsAt(600)).toEqual({
    bottom: expect.closeTo(0, 9) as number,
    deck: expect.closeTo(59, 9) as number,
  });
});

test.each(SAMPLES)('the face lines of %s reach and stand as high as manifold-3d cuts them', (name) => {
  const { board, layup } = planOfSample(name);
  const solid = solidOfMesh(wasm, board.mesh);
  for (const { face } of layup.rows) {
    const { origin, along, inward } = face;
    const line = faceLineAt(board, face);
    // Columns of the matrix: where x, y and z go; s lies to the right, z up in the slice, and what lay inward goes up.
    const turned = solid.transform([
      ...[along[0], 0, inward[0], 0],
      ...[along[1], 0, inward[1], 0],
      ...[0, 1, 0, 0],
      ...[0, 0, 0, 1],
    ] as never);
    const figure = turned.slice(inward[0] * origin[0] + inward[1] * origin[1]);
    const start = origin[0] * along[0] + origin[1] * along[1];
    const { min, max } = figure.bounds();
    expect(Math.abs(line.from + start - min[0])).toBeLessThan(KERNEL_PLACE);
    expect(Math.abs(line.to + start - max[0])).toBeLessThan(KERNEL_PLACE);
    for (const share of [0.1, 0.5, 0.9]) {
      const s = line.from + share * (line.to - line.from);
      // A band 0.002 mm wide at that place, turned upright.
      const band = bandAlong(wasm, s + start, 0, 0.002).rotate(-90);
      const part = figure.intersect(band).bounds();
      const heights = line.heightsAt(s)!;
      expect(Math.abs(heights.bottom - part.min[1])).toBeLessThan(KERNEL_PLACE);
      expect(Math.abs(heights.deck - part.max[1])).toBeLessThan(KERNEL_PLACE);
    }
    turned.delete();
    figure.delete();
  }
});
