import { BufferAttribute, BufferGeometry, Vector3 } from 'three';
import { MeshBVH } from 'three-mesh-bvh';
import type { Dot } from '../../src/dot/dot.js';
import { jointFaces } from '../../src/dot/jointFace.js';
import { toBoard } from '../../src/layup/frame.js';
import type { Plan } from '../../src/plan.js';
import { kernel, solidOfChamber } from '../oracle/kernel.js';

/** The oracles count in single precision: at 4 m a step of that is 0.0003 mm. */
export const SINGLE = 0.002;

/**
 * Smallest distance from a dot's disc to the finished surface, by three-mesh-bvh, over points of its rim and middle: no
 * less than the true one.
 */
export function marginByBvh(plan: Plan, dots: readonly Dot[]): Map<string, number> {
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new BufferAttribute(Float32Array.from(plan.board.mesh.positions), 3));
  geometry.setIndex(new BufferAttribute(Uint32Array.from(plan.board.mesh.triangles), 1));
  const tree = new MeshBVH(geometry);
  const faces = new Map(jointFaces(plan.layup).map(({ joint, face }) => [joint.id, face]));
  return new Map(
    dots.map(({ id, joint, s, z, diameter }) => {
      let least = Infinity;
      for (let k = 0; k <= 48; k++) {
        const r = k === 48 ? 0 : diameter / 2;
        const angle = (2 * Math.PI * k) / 48;
        const at = toBoard(faces.get(joint)!, s + r * Math.cos(angle), z + r * Math.sin(angle), 0);
        const hit = tree.closestPointToPoint(new Vector3(...at));
        if (hit) least = Math.min(least, hit.distance);
      }
      return [id, least];
    }),
  );
}

/** Smallest gap between glue and chambers open to its joint, by manifold-3d; the dot as a thin disc. */
export async function clearances(plan: Plan): Promise<{ dot: string; chamber: string; gap: number }[]> {
  const wasm = await kernel();
  const faces = new Map(jointFaces(plan.layup).map(({ joint, face }) => [joint.id, face]));
  const found: { dot: string; chamber: string; gap: number }[] = [];
  for (const { id, joint, s, z, diameter, sides } of plan.glue.dots) {
    const disc = Array.from({ length: 64 }, (_, k) => {
      const angle = (2 * Math.PI * k) / 64;
      return [s + (diameter / 2) * Math.cos(angle), z + (diameter / 2) * Math.sin(angle)] as const;
    });
    const solid = solidOfChamber(wasm, faces.get(joint)!, disc, [-0.01, 0.01]);
    for (const { row: rowId } of sides) {
      const row = plan.layup.rows.find((each) => each.id === rowId)!;
      for (const chamber of plan.chambers.filter((each) => each.row === rowId)) {
        const reach = chamber.profile.map(([each]) => each);
        if (Math.min(...reach) > s + 100 || Math.max(...reach) < s - 100) continue;
        const other = solidOfChamber(wasm, row.face, chamber.profile, chamber.depth);
        found.push({ dot: id, chamber: chamber.id, gap: solid.minGap(other, 60) });
        other.delete();
      }
    }
    solid.delete();
  }
  return found;
}
