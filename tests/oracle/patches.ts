import type { Manifold as Solid, ManifoldToplevel } from 'manifold-3d';
import { PATCHES, type Mesh, type Patch } from '../../src/board/mesh.js';

/**
 * The three parts of a surface as thin skins in the kernel, parted anew: a triangle belongs to deck or bottom where its
 * normal, worked out from its corners alone, stands no more than 45° from up or down, and else to the rail.
 */
export interface Skins {
  /** Smallest distance from a solid to what certainly is that part, mm; `look` when it is more. */
  gap(patch: Patch, solid: Solid, look: number): number;
  /** The same with triangles on the very edge of the part and those without area, which have no direction. */
  leastGap(patch: Patch, solid: Solid, look: number): number;
  free(): void;
}

/** So near to 45°, in degrees, the last bits decide. */
const DOUBT = 1e-6;
/** Of less area, mm², a triangle has no direction. */
const NO_AREA = 1e-9;
/** Thickness of a skin, mm, outward: what the kernel does not take for nothing. Distances are exact to this. */
export const SKIN = 0.005;

export function skinsOf(k: ManifoldToplevel, mesh: Mesh): Skins {
  const parts = partsOf(mesh);
  const made = new Map<string, Solid | undefined>();
  const skin = (patch: Patch, all: boolean) => {
    const key = `${patch} ${all}`;
    const { sure, doubtful } = parts[patch];
    if (!made.has(key)) made.set(key, skinOf(k, mesh, all ? [...sure, ...doubtful] : sure));
    return made.get(key);
  };
  return {
    gap: (patch, solid, look) => skin(patch, false)?.minGap(solid, look) ?? look,
    leastGap: (patch, solid, look) => skin(patch, true)?.minGap(solid, look) ?? look,
    free: () => made.forEach((each) => each?.delete()),
  };
}

/** The numbers of each part's triangles: those that are certain, and those that may be another's. */
export function partsOf({ positions, triangles }: Mesh): Record<Patch, { sure: number[]; doubtful: number[] }> {
  const part = () => ({ sure: [] as number[], doubtful: [] as number[] });
  const parts = { deck: part(), bottom: part(), rail: part() };
  for (let t = 0; t < triangles.length / 3; t++) {
    const [nx, ny, up] = crossOf(positions, triangles[3 * t]!, triangles[3 * t + 1]!, triangles[3 * t + 2]!);
    const size = Math.hypot(nx, ny, up);
    const angle = (Math.acos(up / size) * 180) / Math.PI;
    if (!(size > NO_AREA)) for (const patch of PATCHES) parts[patch].doubtful.push(t);
    else {
      const near = Math.min(Math.abs(angle - 45), Math.abs(angle - 135)) < DOUBT;
      const flat: Patch = angle < 90 ? 'deck' : 'bottom';
      if (near) for (const patch of [flat, 'rail'] as const) parts[patch].doubtful.push(t);
      else parts[angle < 45 || angle > 135 ? flat : 'rail'].sure.push(t);
    }
  }
  return parts;
}

/** The normal of a triangle, as long as twice its area. */
export function crossOf(p: ArrayLike<number>, a: number, b: number, c: number, step = 3): [number, number, number] {
  const side = (to: number, axis: number) => p[step * to + axis]! - p[step * a + axis]!;
  const [ux, uy, uz, vx, vy, vz] = [side(b, 0), side(b, 1), side(b, 2), side(c, 0), side(c, 1), side(c, 2)];
  return [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx];
}

/** Some triangles and the same a hair further out, joined along their rim; undefined where there are none. */
function skinOf({ Manifold, Mesh: KernelMesh }: ManifoldToplevel, mesh: Mesh, part: number[]): Solid | undefined {
  if (part.length === 0) return undefined;
  const { positions, triangles } = mesh;
  const numbers = new Map<number, number>();
  const faces = part.map((t) =>
    [0, 1, 2].map((i) => {
      const corner = triangles[3 * t + i]!;
      if (!numbers.has(corner)) numbers.set(corner, numbers.size);
      return numbers.get(corner)!;
    }),
  ) as [number, number, number][];
  const count = numbers.size;
  const points = new Float64Array(6 * count);
  for (const [corner, i] of numbers) points.set(positions.subarray(3 * corner, 3 * corner + 3), 3 * i);
  const outward = new Float64Array(3 * count);
  const edges = new Set<number>();
  for (const [a, b, c] of faces) {
    edges
      .add(a * count + b)
      .add(b * count + c)
      .add(c * count + a);
    const normal = crossOf(points, a, b, c);
    const size = Math.hypot(...normal) || 1;
    for (const i of [a, b, c]) for (let axis = 0; axis < 3; axis++) outward[3 * i + axis]! += normal[axis]! / size;
  }
  for (let i = 0; i < 3 * count; i += 3) {
    const size = Math.hypot(outward[i]!, outward[i + 1]!, outward[i + 2]!) || 1;
    for (let axis = i; axis < i + 3; axis++) points[3 * count + axis] = points[axis]! + (SKIN * outward[axis]!) / size;
  }
  const all: number[] = [];
  for (const [a, b, c] of faces) all.push(a, c, b, a + count, b + count, c + count);
  for (const edge of edges) {
    const [a, b] = [Math.floor(edge / count), edge % count];
    if (!edges.has(b * count + a)) all.push(a, b, b + count, a, b + count, a + count);
  }
  return new Manifold(
    new KernelMesh({ numProp: 3, vertProperties: Float32Array.from(points), triVerts: Uint32Array.from(all) }),
  );
}
