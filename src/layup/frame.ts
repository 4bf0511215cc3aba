import type { Face, Joint } from './layup.js';

/** A point of a face's frame in the board frame, mm. */
export function toBoard(face: Face, s: number, z: number, t: number): [x: number, y: number, z: number] {
  const { origin, along, inward } = face;
  return [origin[0] + s * along[0] + t * inward[0], origin[1] + s * along[1] + t * inward[1], z];
}

/** A point of the board in a face's frame, mm. `z` is the same in both. */
export function toFace(face: Face, x: number, y: number): [s: number, t: number] {
  const dx = x - face.origin[0];
  const dy = y - face.origin[1];
  return [dx * face.along[0] + dy * face.along[1], dx * face.inward[0] + dy * face.inward[1]];
}

/**
 * How deep a joint lies behind a face, square to it: `t = at + slope · s`, mm. Joint and face are straight, so this is
 * exact; throws when they stand square to each other, which no glue-up does.
 */
export function depthOf(face: Face, joint: Joint): { at: number; slope: number } {
  const { origin, along, inward } = face;
  const across = inward[1] - joint.slope * inward[0];
  if (Math.abs(across) < 1e-9) throw new RangeError(`joint ${joint.id} stands square to face ${face.id}`);
  return {
    at: (joint.at + joint.slope * origin[0] - origin[1]) / across,
    slope: (joint.slope * along[0] - along[1]) / across,
  };
}
