import type { ManifoldToplevel } from 'manifold-3d';
import { BufferAttribute, BufferGeometry, Vector3 } from 'three';
import { MeshBVH } from 'three-mesh-bvh';
import { beforeAll, describe, expect, test } from 'vitest';
import { boardOf } from '../../src/board/board.js';
import { pointOn, type SideCode } from '../../src/board/surface.js';
import type { BoardSpec, NoseShape, TailShape } from '../../src/job/job.js';
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

/** Points of the smooth surface tried on each board. */
const POINTS = 6000;

describe('the smooth surface lies nowhere further from the mesh than the stated chord error (distances by three-mesh-bvh)', () => {
  test.each(SAMPLES)('%s', (name) => {
    const { mesh, surface, length } = boardOf(sampleJob(name).board);
    const geometry = new BufferGeometry();
    geometry.setAttribute('position', new BufferAttribute(mesh.positions as unknown as Float32Array, 3));
    geometry.setIndex(new BufferAttribute(mesh.triangles.slice(), 1));
    const tree = new MeshBVH(geometry);
    let worst = 0;
    for (let i = 0; i < POINTS; i++) {
      // Additive recurrence (golden ratio and its powers): even, without a clump, the same every time.
      const [a, b] = [(i * 0.7548776662) % 1, (i * 0.569840291) % 1];
      const side = (i % 2) as SideCode;
      // Every third point lies near a tip.
      const x = i % 3 === 0 ? (i % 2 ? a * 40 : length - a * 40) : a * length;
      const point = pointOn(surface, surface.strand(3 * b), side, x);
      if (Math.abs(point[1]) < surface.outlines[side].inner(x)) continue;
      worst = Math.max(worst, tree.closestPointToPoint(new Vector3(...point))!.distance);
    }
    expect(worst).toBeGreaterThan(0);
    expect(worst).toBeLessThanOrEqual(mesh.chordError);
  });
});
