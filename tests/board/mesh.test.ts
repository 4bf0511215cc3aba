import type { TailShape } from '../../src/job/spec/board.js';
import type { NoseShape } from '../../src/job/spec/board.js';
import type { BoardSpec } from '../../src/job/spec/board.js';
import type { ManifoldToplevel } from 'manifold-3d';
import { beforeAll, describe, expect, test } from 'vitest';
import { boardOf } from '../../src/board/board.js';
import { farthestFromMesh } from '../oracle/chord.js';
import { kernel, solidOfMesh } from '../oracle/kernel.js';
import { sampleJob, SAMPLES } from '../samples.js';

let k: ManifoldToplevel;
beforeAll(async () => {
  k = await kernel();
});

const board = (nose: NoseShape, tail: TailShape, tip: number): BoardSpec => ({
  length: 1500,
  right: { nose, tail, points: [200, 600, 1000, 1350].map((x, i) => ({ x, half: [150, 240, 230, 150][i]! })) },
  profile: [0, 300, 900, 1300, 1500].map((x, i) => ({
    x,
    bottom: [90, 30, 0, 10, 30][i]!,
    thickness: [tip, 45, 62, 40, tip][i]!,
  })),
  sections: [
    { x: 300, kind: 'numbers', apex: 0.5, above: 0.78, below: 0.76, crown: 4, bottom: { kind: 'roll', depth: 3 } },
    { x: 900, kind: 'numbers', apex: 0.4, above: 0.8, below: 0.8, crown: 6, bottom: { kind: 'concave', depth: 5 } },
    {
      x: 1300,
      kind: 'numbers',
      apex: 0.2,
      above: 0.8,
      below: 0.8,
      crown: 3,
      bottom: { kind: 'vee', depth: 3 },
      bevel: 15,
    },
  ],
});

const noses: NoseShape[] = [{ kind: 'round' }, { kind: 'pointed' }, { kind: 'square', half: 60 }];
const tails: TailShape[] = [
  { kind: 'pin' },
  { kind: 'round' },
  { kind: 'square', half: 100 },
  { kind: 'squash', half: 100, corner: 25 },
  { kind: 'swallow', half: 100, depth: 60 },
];
const ends = noses.flatMap((nose) =>
  tails.flatMap((tail) =>
    [0, 12].map((tip) => ({ nose, tail, tip, name: `${nose.kind} nose, ${tail.kind} tail, tips ${tip} mm` })),
  ),
);

describe('the surface is one closed solid with the same volume in an independent kernel (manifold-3d)', () => {
  test.each(ends)('$name', ({ nose, tail, tip }) => {
    const { mesh, volume } = boardOf(board(nose, tail, tip));
    const solid = solidOfMesh(k, mesh);
    expect(solid.status()).toBe('NoError');
    expect(solid.genus()).toBe(0);
    // The kernel keeps single-precision corners.
    expect(solid.volume() / 1e6 / volume).toBeCloseTo(1, 5);
    solid.delete();
  });

  test.each(SAMPLES)('%s', (name) => {
    const { mesh, volume } = boardOf(sampleJob(name).board);
    const solid = solidOfMesh(k, mesh);
    expect(solid.status()).toBe('NoError');
    expect(solid.genus()).toBe(0);
    expect(solid.volume() / 1e6 / volume).toBeCloseTo(1, 5);
    solid.delete();
  });
});

describe('the smooth surface lies nowhere further from the mesh than the stated chord error (distances by three-mesh-bvh)', () => {
  test.each(SAMPLES)('%s', (name) => {
    const board = boardOf(sampleJob(name).board);
    const worst = farthestFromMesh(board, 6000);
    expect(worst).toBeGreaterThan(0);
    expect(worst).toBeLessThanOrEqual(board.mesh.chordError);
  });
});
