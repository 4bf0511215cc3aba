import { BufferAttribute, BufferGeometry, DoubleSide, Ray, Vector3 } from 'three';
import { MeshBVH } from 'three-mesh-bvh';
import { describe, expect, test } from 'vitest';
import { boardOf } from '../../src/board/board.js';
import { heightsAt } from '../../src/chamber/heights.js';
import { sampleJob, SAMPLES } from '../samples.js';

/** Between the grid's points the two triangles of a cell and a straight height differ by no more, mm. */
const NEAR = 0.1;

// Rays straight up and down through the mesh, by three-mesh-bvh.
describe.each(SAMPLES)('on the sample %s', (name) => {
  const { grid, mesh, length, width } = boardOf(sampleJob(name).board);
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new BufferAttribute(Float32Array.from(mesh.positions), 3));
  geometry.setIndex(new BufferAttribute(mesh.triangles.slice(), 1));
  const tree = new MeshBVH(geometry);
  const hit = (x: number, y: number, way: 1 | -1) =>
    tree.raycastFirst(new Ray(new Vector3(x, y, -way * 1000), new Vector3(0, 0, way)), DoubleSide)?.point.z;

  test('deck and bottom lie where a plumb line meets the surface, on both sides, and nowhere off the board', () => {
    let [on, off] = [0, 0];
    for (let i = 0; i < 400; i++) {
      const x = length * ((i * 0.7548776662) % 1);
      const y = (width / 2) * 1.05 * (2 * ((i * 0.569840291) % 1) - 1);
      const heights = heightsAt(grid, x, y);
      const [bottom, deck] = [hit(x, y, 1), hit(x, y, -1)];
      if (bottom === undefined || deck === undefined) {
        off++;
        if (heights) expect(heights.deck - heights.bottom, `${x}, ${y}`).toBeLessThan(60);
        continue;
      }
      if (!heights) continue;
      on++;
      // At the rail's own edge a height changes by more than one moves.
      if (Math.abs(y) > 0.8 * (width / 2) || x < 0.1 * length || x > 0.9 * length) continue;
      expect(Math.abs(heights.deck - deck), `${x}, ${y}`).toBeLessThan(NEAR);
      expect(Math.abs(heights.bottom - bottom), `${x}, ${y}`).toBeLessThan(NEAR);
    }
    expect(on).toBeGreaterThan(200);
    expect(off).toBeGreaterThan(10);
    for (const x of [-0.1, length + 0.1]) expect(heightsAt(grid, x, 0)).toBeUndefined();
    expect(heightsAt(grid, length / 2, width)).toBeUndefined();
    expect(heightsAt(grid, length / 2, -width)).toBeUndefined();
  });
});

test('heights are straight between the points of a grid: by hand, on one of two rows and four columns', () => {
  // Keel, chine, apex and middle of the deck; the right half of each row 50 mm wide, then 30.
  const half = (x: number, wide: number, lift: number, side: number) => [
    [x, 0, lift],
    [x, side * wide * 0.8, lift + 2],
    [x, side * wide, lift + 20],
    [x, 0, lift + 40],
  ];
  const positions = [half(0, 50, 0, -1), half(0, 50, 0, 1), half(100, 30, 10, -1), half(100, 30, 10, 1)].flat(2);
  const grid = {
    xs: Float64Array.from([0, 100]),
    vs: new Float64Array(4),
    rows: 2,
    columns: 4,
    apex: 2,
    positions: Float64Array.from(positions),
    same: new Uint32Array(16),
    notchRow: 2,
    chordError: 0,
  };
  const at = (x: number, y: number) => {
    const heights = heightsAt(grid, x, y);
    return heights && [heights.bottom, heights.deck].map((z) => Number(z.toFixed(9)));
  };
  expect(at(0, 20)).toEqual([1, 32]);
  expect(at(0, -20)).toEqual([1, 32]);
  expect(at(0, 25)).toEqual([1.25, 30]);
  expect(at(100, 27)).toEqual([21, 32]);
  // Wider than the next row: not between points.
  expect(at(0, 45)).toBeUndefined();
  expect(at(100, 12)).toEqual([11, 42]);
  expect(at(50, 12)).toEqual([(0.6 + 11) / 2, (40 - 4.8 + 42) / 2]);
  expect(at(25, 0)).toEqual([2.5, 42.5]);
  expect(at(100, 30)).toEqual([30, 30]);
  expect([at(100, 31), at(50, 35), at(-1, 0), at(101, 0)]).toEqual([undefined, undefined, undefined, undefined]);
});
