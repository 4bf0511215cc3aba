import { BufferAttribute, BufferGeometry, DoubleSide, Ray, Vector3 } from 'three';
import { MeshBVH } from 'three-mesh-bvh';
import { expect, test } from 'vitest';
import { boardOf } from '../../src/board/board.js';
import { heightsOver, nearestTo, sortedMesh } from '../../src/proof/surface.js';
import { SAMPLES, sampleJob } from '../samples.js';

// Reference: three-mesh-bvh (https://github.com/gkjohnson/three-mesh-bvh), a general library for rays and distances on
// triangles.
test.each(SAMPLES)('%s: heights over a place and distances to the surface are those of a general library', (name) => {
  const { mesh, length, width } = boardOf(sampleJob(name).board);
  const surface = sortedMesh(mesh);
  const geometry = new BufferGeometry();
  // As double precision: the library reads any array.
  geometry.setAttribute('position', new BufferAttribute(mesh.positions as unknown as Float32Array, 3));
  geometry.setIndex(new BufferAttribute(mesh.triangles.slice(), 1));
  const tree = new MeshBVH(geometry);
  let on = 0;
  for (let i = 0; i < 300; i++) {
    // Additive recurrence (powers of the plastic number): even, without a clump, the same every time.
    const [x, y] = [((i * 0.7548776662) % 1) * length, (((i * 0.569840291) % 1) - 0.5) * 1.02 * width];
    const hits = tree.raycast(new Ray(new Vector3(x, y, 5000), new Vector3(0, 0, -1)), DoubleSide);
    const over = heightsOver(surface, x, y);
    expect(over !== undefined).toBe(hits.length > 0);
    if (!over) continue;
    on++;
    const z = hits.map(({ point }) => point.z);
    expect(over.high).toBeCloseTo(Math.max(...z), 6);
    expect(over.low).toBeCloseTo(Math.min(...z), 6);
    const inside = [x, y, over.low + ((i % 7) / 7) * (over.high - over.low)] as const;
    const near = tree.closestPointToPoint(new Vector3(...inside))!.distance;
    expect(nearestTo(surface, [inside], 60)).toBeCloseTo(Math.min(60, near), 6);
  }
  expect(on).toBeGreaterThan(150);
});
