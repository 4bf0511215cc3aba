import { expect, test } from 'vitest';
import type { Grid } from '../../src/board/grid.js';
import { PATCHES, type Mesh } from '../../src/board/mesh.js';
import { vertexNormalsOf } from '../../src/board/vertexNormals.js';

/** Triangles at points, each with its plane's direction and its patch; `same` where a point stands for another. */
function around(
  points: number,
  planes: readonly { corners: [number, number, number]; normal: [number, number, number]; patch: number }[],
  same = Array.from({ length: points }, (_, i) => i),
) {
  const grid = { positions: new Float64Array(3 * points), same: Uint32Array.from(same) } as unknown as Grid;
  const mesh = {
    triangles: Uint32Array.from(planes.flatMap(({ corners }) => corners)),
    normals: Float64Array.from(planes.flatMap(({ normal }) => normal)),
    patches: Uint8Array.from(planes, ({ patch }) => patch),
  } as unknown as Mesh;
  const { normals, cosines } = vertexNormalsOf(grid, mesh);
  return {
    normal: (i: number) => [...normals.subarray(3 * i, 3 * i + 3)],
    cosine: (i: number) => [...cosines.subarray(PATCHES.length * i, PATCHES.length * (i + 1))],
  };
}
const close = (found: readonly number[], exact: readonly number[]) =>
  exact.forEach((value, i) => expect(found[i], `${i}`).toBeCloseTo(value, 12));

// The mean of directions square to each other leans from each by the angle whose cosine is 1 / √n, exact.
test('at a corner of a box the direction is its diagonal, and every plane leans from it by 1 / √3', () => {
  const { normal, cosine } = around(5, [
    { corners: [1, 2, 3], normal: [0, 0, 1], patch: 0 },
    { corners: [2, 1, 4], normal: [0, 1, 0], patch: 2 },
    { corners: [4, 3, 1], normal: [1, 0, 0], patch: 1 },
  ]);
  const third = 1 / Math.sqrt(3);
  close(normal(1), [third, third, third]);
  close(cosine(1), [third, third, third]);
  const half = Math.SQRT1_2;
  close(normal(2), [0, half, half]);
  close(cosine(2), [half, 0, half]);
  close(normal(3), [half, 0, half]);
  close(cosine(3), [half, half, 0]);
  close(normal(4), [half, half, 0]);
  close(cosine(4), [0, half, half]);
  // Where no triangle meets there is no direction.
  close(normal(0), [0, 0, 0]);
  close(cosine(0), [0, 0, 0]);
});

test('of several planes of a patch the one that leans furthest counts, in whatever order they come', () => {
  // Three planes of one patch: up twice, and out once. Their mean leans by atan ½ from up and by atan 2 from out.
  const up = {
    corners: [0, 1, 2] as [number, number, number],
    normal: [0, 0, 1] as [number, number, number],
    patch: 0,
  };
  const out = { ...up, normal: [0, -1, 0] as [number, number, number] };
  for (const planes of [
    [up, up, out],
    [out, up, up],
    [up, out, up],
  ]) {
    const { normal, cosine } = around(3, planes);
    close(normal(0), [0, -1 / Math.sqrt(5), 2 / Math.sqrt(5)]);
    close(cosine(0), [1 / Math.sqrt(5), 0, 0]);
  }
  const { cosine } = around(3, [up, up, { ...out, patch: 2 }]);
  close(cosine(1), [2 / Math.sqrt(5), 0, 1 / Math.sqrt(5)]);
});

test('on an edge sharper than is moved no further it counts as that sharp', () => {
  const leaning = (angle: number, patch: number) => ({
    corners: [0, 1, 2] as [number, number, number],
    normal: [0, Math.sin(angle), Math.cos(angle)] as [number, number, number],
    patch,
  });
  const between = (angle: number) => around(3, [leaning(angle, 0), leaning(-angle, 1)]).cosine(1);
  close(between(1), [Math.cos(1), Math.cos(1), 0]);
  // The bound itself is common practice, no source: an edge of some 140° between its planes.
  close(between(1.3), [0.35, 0.35, 0]);
  close(between(1.5), [0.35, 0.35, 0]);
});

test('a triangle tells of its own three corners, in whatever order triangles stand', () => {
  const one = {
    corners: [0, 1, 2] as [number, number, number],
    normal: [1, 0, 0] as [number, number, number],
    patch: 2,
  };
  const two = {
    corners: [3, 4, 5] as [number, number, number],
    normal: [0, 0, 1] as [number, number, number],
    patch: 0,
  };
  for (const planes of [
    [one, two],
    [two, one],
  ]) {
    const { normal, cosine } = around(6, planes);
    for (const i of [0, 1, 2]) expect([normal(i), cosine(i)]).toEqual([one.normal, [0, 0, 1]]);
    for (const i of [3, 4, 5]) expect([normal(i), cosine(i)]).toEqual([two.normal, [1, 0, 0]]);
  }
});

test('a point that another stands for has what that one has', () => {
  const { normal, cosine } = around(
    6,
    [
      { corners: [5, 2, 4], normal: [0.6, 0, 0.8], patch: 0 },
      { corners: [5, 4, 2], normal: [0.6, 0, -0.8], patch: 1 },
      { corners: [2, 2, 2], normal: [0, 1, 0], patch: 2 },
    ],
    [5, 2, 2, 5, 4, 5],
  );
  for (const i of [0, 3, 5]) {
    close(normal(i), [1, 0, 0]);
    close(cosine(i), [0.6, 0.6, 0]);
  }
  expect(normal(1)).toEqual(normal(2));
  expect(cosine(1)).toEqual(cosine(2));
  // (0.6, 0, ±0.8) once each and three times (0, 1, 0).
  close(normal(1), [1.2 / Math.hypot(1.2, 3), 3 / Math.hypot(1.2, 3), 0]);
  close(
    cosine(1),
    [0.72 / Math.hypot(1.2, 3), 0.72 / Math.hypot(1.2, 3), 3 / Math.hypot(1.2, 3)].map((c) => Math.max(0.35, c)),
  );
});
