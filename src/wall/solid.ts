import { toBoard } from '../layup/frame.js';
import type { Face } from '../layup/layup.js';
import { flatOf, type Flat } from './closest.js';

/**
 * A chamber's solid in the board frame: the rectangles that the edges of its profile sweep through its depth, and its two flat ends.
 *
 * Layout of `flats` as in `closest.ts`. `boxes` holds six numbers (low x y z, high x y z) for the whole solid, then for each flat, then for
 * the ends at the face and at the depth, then for each group of `GROUP` of these parts in their order.
 */
export interface Solid {
  readonly face: Face;
  /** `[s, z]` pairs, counter-clockwise. */
  readonly profile: readonly (readonly [number, number])[];
  readonly depth: readonly [number, number];
  readonly flats: readonly Flat[];
  readonly boxes: Float64Array;
  /** Box around the profile in the face's plane: low s z, high s z. */
  readonly reach: readonly [number, number, number, number];
}

/** Parts of a solid that are passed over together where they are far. */
export const GROUP = 4;

export function solidOf(
  face: Face,
  profile: readonly (readonly [number, number])[],
  depth: readonly [number, number],
): Solid {
  const n = profile.length;
  const through = depth[1] - depth[0];
  const sideX = face.inward[0] * through;
  const sideY = face.inward[1] * through;
  const parts = n + 2;
  const boxes = new Float64Array(6 * (1 + parts + Math.ceil(parts / GROUP)));
  for (let at = 0; at < boxes.length; at += 6) {
    boxes.fill(Infinity, at, at + 3);
    boxes.fill(-Infinity, at + 3, at + 6);
  }
  const flats = profile.map(([s, z], i): Flat => {
    const [s2, z2] = profile[(i + 1) % n]!;
    const [x, y] = toBoard(face, s, z, depth[0]);
    const ex = (s2 - s) * face.along[0];
    const ey = (s2 - s) * face.along[1];
    const length = Math.hypot(s2 - s, z2 - z) || 1;
    for (const box of [0, i + 1, n + 1]) {
      widen(boxes, box, x, y, z);
      widen(boxes, box, x + ex, y + ey, z2);
    }
    for (const box of [0, i + 1, n + 2]) {
      widen(boxes, box, x + sideX, y + sideY, z);
      widen(boxes, box, x + ex + sideX, y + ey + sideY, z2);
    }
    // Outward of a counter-clockwise profile is to the right of its edge: (dz, −ds).
    const ns = (z2 - z) / length;
    const normal = [ns * face.along[0], ns * face.along[1], (s - s2) / length] as const;
    return flatOf([x, y, z], [ex, ey, z2 - z], [sideX, sideY, 0], normal);
  });
  for (let part = 0; part < parts; part++) join(boxes, part + 1, 1 + parts + Math.floor(part / GROUP));
  const s = profile.map((pair) => pair[0]);
  const z = profile.map((pair) => pair[1]);
  return {
    face,
    profile,
    depth,
    flats,
    boxes,
    reach: [Math.min(...s), Math.min(...z), Math.max(...s), Math.max(...z)],
  };
}

/** Widens a box by another. */
function join(boxes: Float64Array, from: number, into: number): void {
  for (const at of [6 * from, 6 * from + 3]) widen(boxes, into, boxes[at]!, boxes[at + 1]!, boxes[at + 2]!);
}

function widen(boxes: Float64Array, box: number, x: number, y: number, z: number): void {
  const at = 6 * box;
  if (x < boxes[at]!) boxes[at] = x;
  if (y < boxes[at + 1]!) boxes[at + 1] = y;
  if (z < boxes[at + 2]!) boxes[at + 2] = z;
  if (x > boxes[at + 3]!) boxes[at + 3] = x;
  if (y > boxes[at + 4]!) boxes[at + 4] = y;
  if (z > boxes[at + 5]!) boxes[at + 5] = z;
}

/** Whether a point of the face's plane lies in the profile; by the crossings of a ray. */
export function inProfile(profile: readonly (readonly [number, number])[], s: number, z: number): boolean {
  let inside = false;
  for (let i = 0, j = profile.length - 1; i < profile.length; j = i++) {
    const si = profile[i]![0];
    const zi = profile[i]![1];
    const sj = profile[j]![0];
    const zj = profile[j]![1];
    if (zi > z !== zj > z && s < ((sj - si) * (z - zi)) / (zj - zi) + si) inside = !inside;
  }
  return inside;
}
