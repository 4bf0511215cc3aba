import Module, { type Manifold as Solid, type ManifoldToplevel } from 'manifold-3d';
import type { Mesh } from '../../src/board/mesh.js';
import type { Face } from '../../src/layup/layup.js';

/** manifold-3d (https://github.com/elalish/manifold): an independent solid-geometry kernel that knows nothing of boards. */
export async function kernel(): Promise<ManifoldToplevel> {
  const wasm = await Module();
  wasm.setup();
  return wasm;
}

export function solidOfMesh({ Manifold, Mesh: KernelMesh }: ManifoldToplevel, mesh: Mesh): Solid {
  const given = new KernelMesh({
    numProp: 3,
    vertProperties: Float32Array.from(mesh.positions),
    triVerts: mesh.triangles,
  });
  given.merge();
  return new Manifold(given);
}

/** A chamber's solid in the board frame: profile × depth, square to its face. */
export function solidOfChamber(
  { CrossSection }: ManifoldToplevel,
  face: Pick<Face, 'origin' | 'along' | 'inward'>,
  profile: readonly (readonly [number, number])[],
  depth: readonly [number, number],
): Solid {
  const { origin, along, inward } = face;
  const section = new CrossSection([profile.map(([s, z]): [number, number] => [s, z])]);
  // Extruded along t; then s, z, t are turned to x, y, z by the columns of this matrix.
  const prism = section.extrude(depth[1] - depth[0]);
  const start = [origin[0] + depth[0] * inward[0], origin[1] + depth[0] * inward[1]] as const;
  const placed = prism.transform([
    ...[along[0], along[1], 0, 0],
    ...[0, 0, 1, 0],
    ...[inward[0], inward[1], 0, 0],
    ...[start[0], start[1], 0, 1],
  ] as unknown as Parameters<Solid['transform']>[0]);
  section.delete();
  prism.delete();
  return placed;
}

/** How far the oracle looks; a wall thicker than this is only known to be thicker, mm. */
const LOOK = 60;
/** The outside is cut into slabs of about this length, mm, so that each chamber is asked of the near ones only. */
const SLAB = 700;

/** The space around a board, to measure gaps to. Free it when done: the kernel's memory is not collected. */
export interface Outside {
  /** Smallest distance from a solid to the outside of the board; `LOOK` when it is more. */
  gap(solid: Solid): number;
  free(): void;
}

export function outsideOf({ Manifold, Mesh: KernelMesh }: ManifoldToplevel, mesh: Mesh): Outside {
  const [min, max] = [0, 1].map((end) =>
    [0, 1, 2].map((axis) => {
      let far = end === 0 ? Infinity : -Infinity;
      for (let i = axis; i < mesh.positions.length; i += 3)
        far = end === 0 ? Math.min(far, mesh.positions[i]!) : Math.max(far, mesh.positions[i]!);
      return far + (end === 0 ? -2 : 2) * LOOK;
    }),
  ) as [number[], number[]];
  // A block with the board's surface turned inside out within it: no boolean, so nothing is rounded.
  const count = mesh.positions.length / 3;
  const corners = Array.from({ length: 8 }, (_, i) =>
    [0, 1, 2].map((axis) => (i & (1 << axis) ? max[axis]! : min[axis]!)),
  );
  const turned = mesh.triangles.slice().reverse();
  const given = new KernelMesh({
    numProp: 3,
    vertProperties: Float32Array.from([...mesh.positions, ...corners.flat()]),
    triVerts: Uint32Array.from([...turned, ...BLOCK.map((i) => i + count)]),
  });
  given.merge();
  const slabs: { low: number; high: number; part: Solid }[] = [];
  let rest = new Manifold(given);
  for (let low = min[0]!; low < max[0]!; low += SLAB) {
    const [after, before] = rest.splitByPlane([1, 0, 0], low + SLAB);
    rest.delete();
    slabs.push({ low, high: low + SLAB, part: before! });
    rest = after!;
  }
  rest.delete();
  return {
    gap(solid) {
      const box = solid.boundingBox();
      const near = slabs.filter(({ low, high }) => high > box.min[0]! - LOOK && low < box.max[0]! + LOOK);
      return Math.min(LOOK, ...near.map(({ part }) => solid.minGap(part, LOOK)));
    },
    free: () => slabs.forEach(({ part }) => part.delete()),
  };
}

/** The triangles of a block, outward, its corners numbered by the bits of x, y, z. */
const BLOCK = [
  0, 2, 1, 1, 2, 3, 4, 5, 6, 5, 7, 6, 0, 1, 4, 1, 5, 4, 2, 6, 3, 3, 6, 7, 0, 4, 2, 2, 4, 6, 1, 3, 5, 3, 7, 5,
];

export { LOOK };
