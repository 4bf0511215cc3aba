import type { Manifold, ManifoldToplevel } from 'manifold-3d';
import type { Rigid } from '../../src/scan/place/rigid.js';
import { moved } from '../../src/scan/place/rigid.js';
import type { Triangles } from '../../src/scan/triangles.js';

/** The triangles of a solid of the kernel, and free it. */
export function trianglesOf(solid: Manifold): Triangles {
  const { numProp, vertProperties, triVerts } = solid.getMesh();
  const count = vertProperties.length / numProp;
  const positions = new Float64Array(3 * count);
  for (let i = 0; i < count; i++)
    for (let axis = 0; axis < 3; axis++) positions[3 * i + axis] = vertProperties[numProp * i + axis]!;
  solid.delete();
  return { positions, triangles: Uint32Array.from(triVerts) };
}

/** How a board's ends rise over its middle, mm at a distance from the middle toward the tail, mm. */
export const rockerAt = (x: number): number => 60e-6 * x * x - 1.2e-8 * x * x * x;

/** Half axes of the ellipsoid below, mm. */
export const HALF = { length: 1450, width: 270, thickness: 55 } as const;
/** Its volume, litres: 4/3 π abc; a rocker shears it and changes nothing of that (B. Cavalieri, 1635). */
export const VOLUME = ((4 / 3) * Math.PI * HALF.length * HALF.width * HALF.thickness) / 1e6;

/**
 * A board of closed form by the kernel: an ellipsoid with a rocker, its middle at the origin, nose at smaller x, deck
 * up. The tangent to its bottom under the middle of its volume is level.
 */
export function ellipsoidBoard({ Manifold: Kernel }: ManifoldToplevel, segments: number): Triangles {
  const { length, width, thickness } = HALF;
  const sphere = Kernel.sphere(1, segments);
  const bent = sphere.warp((p) => {
    p[0] *= length;
    p[1] *= width;
    p[2] = p[2] * thickness + rockerAt(p[0]);
  });
  sphere.delete();
  return trianglesOf(bent);
}

/** The same triangles elsewhere. */
export function placed({ positions, triangles }: Triangles, rigid: Rigid): Triangles {
  const found = new Float64Array(positions.length);
  for (let i = 0; i < positions.length; i += 3)
    found.set(moved(rigid, [positions[i]!, positions[i + 1]!, positions[i + 2]!]), i);
  return { positions: found, triangles };
}

/** Every point moved at random, by normal deviates of that size, mm. */
export function noisy({ positions, triangles }: Triangles, deviation: number, random: () => number): Triangles {
  // G. E. P. Box and M. E. Muller, "A note on the generation of random normal deviates", Ann. Math. Statist. 29 (1958).
  const normal = () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
  return { positions: positions.map((value) => value + deviation * normal()), triangles };
}

/** Without the triangles that have a corner within a ball. */
export function holed(
  { positions, triangles }: Triangles,
  [x, y, z]: readonly [number, number, number],
  radius: number,
): Triangles {
  const isIn = (i: number) =>
    Math.hypot(positions[3 * i]! - x, positions[3 * i + 1]! - y, positions[3 * i + 2]! - z) < radius;
  const kept: number[] = [];
  for (let t = 0; t < triangles.length; t += 3)
    if (![0, 1, 2].some((corner) => isIn(triangles[t + corner]!))) kept.push(...triangles.subarray(t, t + 3));
  return { positions, triangles: Uint32Array.from(kept) };
}

/** Binary STL. */
export function stlBytes({ positions, triangles }: Triangles): Uint8Array {
  const count = triangles.length / 3;
  const bytes = new Uint8Array(84 + 50 * count);
  const view = new DataView(bytes.buffer);
  view.setUint32(80, count, true);
  for (let t = 0; t < count; t++)
    for (let corner = 0; corner < 3; corner++)
      for (let axis = 0; axis < 3; axis++)
        view.setFloat32(
          84 + 50 * t + 12 + 12 * corner + 4 * axis,
          positions[3 * triangles[3 * t + corner]! + axis]!,
          true,
        );
  return bytes;
}

/** Numbers from 0 to 1, the same for the same seed. Source: G. Steele and others' SplitMix (OOPSLA 2014), 32 bits. */
export function randomFrom(seed: number): () => number {
  let state = seed | 0;
  return () => {
    state = (state + 0x9e3779b9) | 0;
    let z = Math.imul(state ^ (state >>> 16), 0x21f0aaad);
    z = Math.imul(z ^ (z >>> 15), 0x735a2d97);
    return ((z ^ (z >>> 15)) >>> 0) / 2 ** 32;
  };
}
