import { toBoard } from '../layup/frame.js';
import type { Face } from '../layup/layup.js';
import type { Flat } from './closest.js';

/**
 * A chamber's solid in the board frame: the rectangles that the edges of its profile sweep through its depth, and what its two flat
 * ends need to be asked. Layout of `flats` as in `closest.ts`; `boxes` six numbers a rectangle (low x y z, high x y z).
 */
export interface Solid {
  readonly face: Face;
  /** `[s, z]` pairs, counter-clockwise. */
  readonly profile: readonly (readonly [number, number])[];
  readonly depth: readonly [number, number];
  readonly flats: readonly Flat[];
  readonly boxes: Float64Array;
}

export function solidOf(
  face: Face,
  profile: readonly (readonly [number, number])[],
  depth: readonly [number, number],
): Solid {
  const flats: Flat[] = [];
  const boxes = new Float64Array(6 * profile.length);
  const through = depth[1] - depth[0];
  const side = [face.inward[0] * through, face.inward[1] * through, 0] as const;
  profile.forEach(([s, z], i) => {
    const [s2, z2] = profile[(i + 1) % profile.length]!;
    const corner = toBoard(face, s, z, depth[0]);
    const edge = [(s2 - s) * face.along[0], (s2 - s) * face.along[1], z2 - z] as const;
    const length = Math.hypot(s2 - s, z2 - z) || 1;
    // Outward of the profile is to the right of its edge: (dz, −ds).
    const ns = (z2 - z) / length;
    flats.push(Float64Array.of(...corner, ...edge, ...side, ns * face.along[0], ns * face.along[1], (s - s2) / length));
    for (let axis = 0; axis < 3; axis++) {
      const c = corner[axis]!;
      const e = edge[axis]!;
      const d = side[axis]!;
      boxes[6 * i + axis] = c + Math.min(0, e) + Math.min(0, d);
      boxes[6 * i + 3 + axis] = c + Math.max(0, e) + Math.max(0, d);
    }
  });
  return { face, profile, depth, flats, boxes };
}

/** Whether a point of the face's plane lies in the profile; by the crossings of a ray. */
export function inProfile(profile: readonly (readonly [number, number])[], s: number, z: number): boolean {
  let inside = false;
  for (let i = 0, j = profile.length - 1; i < profile.length; j = i++) {
    const [si, zi] = profile[i]!;
    const [sj, zj] = profile[j]!;
    if (zi > z !== zj > z && s < ((sj - si) * (z - zi)) / (zj - zi) + si) inside = !inside;
  }
  return inside;
}
