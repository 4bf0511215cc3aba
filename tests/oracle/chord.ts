import { BufferAttribute, BufferGeometry, Vector3 } from 'three';
import { MeshBVH } from 'three-mesh-bvh';
import type { Board } from '../../src/board/board.js';
import { pointOn, type SideCode } from '../../src/board/surface.js';

/** How near a tip every third point lies, mm. */
const NEAR_TIP = 40;

/**
 * How far the smooth surface lies from the mesh at most, mm, over so many points of it; distances by three-mesh-bvh.
 */
export function farthestFromMesh({ mesh, surface, length }: Board, points: number): number {
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new BufferAttribute(mesh.positions as unknown as Float32Array, 3));
  geometry.setIndex(new BufferAttribute(mesh.triangles.slice(), 1));
  const tree = new MeshBVH(geometry);
  let worst = 0;
  for (let i = 0; i < points; i++) {
    // Additive recurrence (golden ratio and its powers): even, without a clump, the same every time.
    const [a, b] = [(i * 0.7548776662) % 1, (i * 0.569840291) % 1];
    const side = (i % 2) as SideCode;
    const x = i % 3 === 0 ? (i % 2 ? a * NEAR_TIP : length - a * NEAR_TIP) : a * length;
    const point = pointOn(surface, 3 * b, side, x);
    if (Math.abs(point[1]) < surface.outlines[side].inner(x)) continue;
    worst = Math.max(worst, tree.closestPointToPoint(new Vector3(...point))!.distance);
  }
  return worst;
}
