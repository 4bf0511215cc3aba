import type { Point } from '../contour/point.js';
import { toBoard } from '../layup/frame.js';
import type { Face } from '../layup/layup.js';
import { AFTER_SECOND, CORNERS, FLAT, setNormal, setSides, type Flats } from './closest.js';

/**
 * A chamber's solid in the board frame: the rectangles that the edges of its profile sweep through its depth, and its
 * two flat ends.
 *
 * Layout of `flats` as in `closest.ts`. `boxes` holds six numbers (low x y z, high x y z) for the whole solid, then for
 * each flat, then for the ends at the face and at the depth, then for each group of `GROUP` of these parts in their
 * order.
 */
export interface Solid {
  readonly face: Face;
  /** `[s, z]` pairs, counter-clockwise. */
  readonly profile: readonly Point[];
  readonly depth: readonly [number, number];
  readonly flats: Flats;
  readonly boxes: Float64Array;
  /** Box around the profile in the face's plane: low s z, high s z. */
  readonly bounds: readonly [number, number, number, number];
}

/** Parts of a solid that are passed over together where they are far. */
export const GROUP = 4;

export function solidOf(face: Face, profile: readonly Point[], depth: readonly [number, number]): Solid {
  const n = profile.length;
  const parts = n + 2;
  const flats = new Float64Array(FLAT * n);
  const boxes = new Float64Array(6 * (1 + parts + Math.ceil(parts / GROUP)));
  for (let at = 0; at < boxes.length; at += 6) {
    boxes.fill(Infinity, at, at + 3);
    boxes.fill(-Infinity, at + 3, at + 6);
  }
  const { along, inward } = face;
  const through = depth[1] - depth[0];
  for (let i = 0; i < n; i++) {
    const [s, z] = profile[i]!;
    const [s2, z2] = profile[(i + 1) % n]!;
    const [x, y] = toBoard(face, s, z, depth[0]);
    const ds = s2 - s;
    const dz = z2 - z;
    const length = Math.sqrt(ds * ds + dz * dz) || 1;
    // Outward of a counter-clockwise profile is to the right of its edge: (dz, −ds).
    const out = dz / length;
    const flat = FLAT * i;
    setSides(flats, flat, x, y, z, ds * along[0], ds * along[1], dz, inward[0] * through, inward[1] * through, 0);
    setNormal(flats, flat, out * along[0], out * along[1], -ds / length);
    for (const corner of CORNERS) widen(boxes, i + 1, flats, flat + corner);
    widen(boxes, n + 1, flats, flat);
    widen(boxes, n + 2, flats, flat + AFTER_SECOND);
  }
  for (let part = 0; part < parts; part++)
    for (const box of [0, 1 + parts + Math.floor(part / GROUP)]) join(boxes, part + 1, box);
  const s = profile.map((pair) => pair[0]);
  const z = profile.map((pair) => pair[1]);
  return {
    face,
    profile,
    depth,
    flats,
    boxes,
    bounds: [Math.min(...s), Math.min(...z), Math.max(...s), Math.max(...z)],
  };
}

/** Widens a box by another. */
function join(boxes: Float64Array, from: number, into: number): void {
  widen(boxes, into, boxes, 6 * from);
  widen(boxes, into, boxes, 6 * from + 3);
}

/** Widens a box by the point that stands at `at` in `points`. */
function widen(boxes: Float64Array, box: number, points: Float64Array, at: number): void {
  for (let low = 6 * box, axis = 0; axis < 3; low++, axis++) {
    const value = points[at + axis]!;
    if (value < boxes[low]!) boxes[low] = value;
    if (value > boxes[low + 3]!) boxes[low + 3] = value;
  }
}
