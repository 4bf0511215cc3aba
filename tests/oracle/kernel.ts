import Module, { type Manifold as Solid, type ManifoldToplevel } from 'manifold-3d';
import type { Mesh } from '../../src/board/mesh.js';
import type { Face } from '../../src/layup/layup.js';

/**
 * manifold-3d (https://github.com/elalish/manifold): an independent solid-geometry kernel that knows nothing of boards.
 */
export async function kernel(): Promise<ManifoldToplevel> {
  const wasm = await Module();
  wasm.setup();
  return wasm;
}

export function solidOfMesh({ Manifold, Mesh: KernelMesh }: ManifoldToplevel, mesh: Mesh): Solid {
  return new Manifold(
    new KernelMesh({ numProp: 3, vertProperties: Float32Array.from(mesh.positions), triVerts: mesh.triangles }),
  );
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

/** The space around a board, to measure gaps to. Free it when done: the kernel's memory is not collected. */
export interface Outside {
  /**
   * What the kernel makes of it: `NoError` and genus −1, one hollow in one block, where the board's surface is closed
   * and in one piece.
   */
  readonly form: readonly [status: string, genus: number];
  /** Smallest distance from a solid to the outside of the board, mm; `look` when it is more. */
  gap(solid: Solid, look: number): number;
  free(): void;
}

/** How far the block around the board reaches beyond it, mm. */
const BEYOND = 200;

export function outsideOf({ Manifold, Mesh: KernelMesh }: ManifoldToplevel, mesh: Mesh): Outside {
  const [min, max] = [-1, 1].map((side) =>
    [0, 1, 2].map((axis) => {
      let far = 0;
      for (let i = axis; i < mesh.positions.length; i += 3) far = Math.max(far, side * mesh.positions[i]!);
      return side * (far + BEYOND);
    }),
  ) as [number[], number[]];
  // A block with the board's surface turned inside out within it: no boolean, so nothing is rounded.
  const count = mesh.positions.length / 3;
  const corners = Array.from({ length: 8 }, (_, i) =>
    [0, 1, 2].map((axis) => (i & (1 << axis) ? max[axis]! : min[axis]!)),
  );
  const space = new Manifold(
    new KernelMesh({
      numProp: 3,
      vertProperties: Float32Array.from([...mesh.positions, ...corners.flat()]),
      triVerts: Uint32Array.from([...mesh.triangles.slice().reverse(), ...BLOCK.map((i) => i + count)]),
    }),
  );
  return {
    form: [space.status(), space.genus()],
    // The kernel looks the smaller solid up in the larger one's tree, not the other way round.
    gap: (solid, look) => space.minGap(solid, look),
    free: () => space.delete(),
  };
}

/** The triangles of a block, outward, its corners numbered by the bits of x, y, z. */
const BLOCK = [
  0, 2, 1, 1, 2, 3, 4, 5, 6, 5, 7, 6, 0, 1, 4, 1, 5, 4, 2, 6, 3, 3, 6, 7, 0, 4, 2, 2, 4, 6, 1, 3, 5, 3, 7, 5,
];
