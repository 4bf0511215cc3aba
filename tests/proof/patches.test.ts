import { expect, test } from 'vitest';
import { boardOf } from '../../src/board/board.js';
import { PATCHES } from '../../src/board/mesh.js';
import { kernel, solidOfMesh } from '../oracle/kernel.js';
import { crossOf } from '../oracle/patches.js';
import { sampleJob } from '../samples.js';

/** So near to the edge of a part, in degrees, the kernel's single precision decides. */
const DOUBT = 0.5;

test('a surface is parted into deck, bottom and rail as by the normals of the kernel (manifold-3d), area by area', async () => {
  const k = await kernel();
  const { mesh } = boardOf(sampleJob('fell-short').board);
  const solid = solidOfMesh(k, mesh);
  const { numProp, triVerts, vertProperties } = solid.calculateNormals(0, 0).getMesh();
  const area = { deck: 0, bottom: 0, rail: 0, doubtful: 0 };
  for (let t = 0; t < triVerts.length; t += 3) {
    const [a, b, c] = triVerts.subarray(t, t + 3) as unknown as [number, number, number];
    const angle = (Math.acos(Math.min(1, Math.max(-1, vertProperties[numProp * a + 5]!))) * 180) / Math.PI;
    const near = Math.min(Math.abs(angle - 45), Math.abs(angle - 135)) < DOUBT;
    const part = near ? 'doubtful' : angle < 45 ? 'deck' : angle > 135 ? 'bottom' : 'rail';
    area[part] += Math.hypot(...crossOf(vertProperties, a, b, c, numProp)) / 2;
  }
  solid.delete();
  const all = Object.values(area).reduce((sum, each) => sum + each, 0);
  expect(area.doubtful).toBeLessThan(0.01 * all);
  PATCHES.forEach((patch, code) => {
    let own = 0;
    for (let t = 0; t < mesh.patches.length; t++) {
      const [a, b, c] = mesh.triangles.subarray(3 * t, 3 * t + 3) as unknown as [number, number, number];
      if (mesh.patches[t] === code) own += Math.hypot(...crossOf(mesh.positions, a, b, c)) / 2;
    }
    expect(Math.abs(own - area[patch])).toBeLessThan(area.doubtful + 1e-4 * all);
  });
});
