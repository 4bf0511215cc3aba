import type { Point } from '../contour/point.js';
import type { Board } from '../board/board.js';
import type { Note } from '../chamber/chamber.js';
import type { DotSpec, GluedPoint } from '../job/spec/dots.js';
import type { Past } from '../kept/past.js';
import { dotName, smearName } from '../job/names.js';
import type { PatchTrees } from '../wall/patchTree.js';
import { surfaceLines, unknownJoint, type JointFace } from './jointFace.js';
import { brokenMargin, isBetween, marginOf } from './margin.js';
import type { DotSpot, Spot } from './spot.js';

/** What the job says of the glue on one joint. */
export interface GluedJoint {
  /** Every dot it holds; undefined where they are as planned. */
  readonly dots?: readonly DotSpot[];
  readonly smears: readonly Spot[];
}

/**
 * The glue as the job says it landed, by joint, and what is wrong with what it says: joints it does not know, dots off
 * their face or too near to the surface.
 *
 * @param drawn the board as it was drawn when it was glued up: a dot of which no height is told was put in the middle
 *   of that one's face
 */
export function gluedJoints(
  board: Board,
  faces: readonly JointFace[],
  trees: PatchTrees,
  { glued, margin }: DotSpec,
  past: Past,
  drawn: Board = board,
): { joints: Map<string, GluedJoint>; notes: Note[] } {
  const joints = new Map<string, GluedJoint>();
  const notes: Note[] = [];
  for (const one of glued) {
    const face = faces.find(({ joint }) => joint.id === one.joint);
    if (!face) {
      notes.push(unknownJoint(one.joint, faces));
      continue;
    }
    const lines = surfaceLines(board, face, past);
    const asDrawn = surfaceLines(drawn, face, past);
    const place = ({ x, height }: GluedPoint): Point => {
      const s = x / face.face.along[0];
      const [top, bottom] = [asDrawn.top(s), asDrawn.bottom(s)];
      if (!height) return [s, (top + bottom) / 2];
      if ('z' in height) return [s, height.z];
      return [s, 'overBottom' in height ? bottom + height.overBottom : top - height.underDeck];
    };
    const isOn = ([s, z]: Point, name: string): boolean => {
      const on = isBetween(lines, [s, z]);
      if (!on) notes.push({ kind: 'glue', where: name, why: 'off-face', by: [], at: s });
      return on;
    };
    const dots = one.dots?.flatMap((dot, i): DotSpot[] => {
      const name = dotName(face.joint, i + 1);
      const at = place(dot);
      if (!isOn(at, name)) return [];
      const radius = dot.diameter / 2;
      const has = marginOf(face.face, at, radius, board, trees);
      const spot: DotSpot = { name, joint: one.joint, from: at, to: at, radius, margin: has };
      const broken = brokenMargin(spot, margin);
      if (broken) notes.push(broken);
      return [spot];
    });
    const smears = one.smears.flatMap((smear, i): Spot[] => {
      const name = smearName(face.joint, i + 1);
      const [from, to] = [place(smear.from), place(smear.to)];
      if (!isOn(from, name) || !isOn(to, name)) return [];
      return [{ name, joint: one.joint, from, to, radius: smear.width / 2 }];
    });
    joints.set(one.joint, { ...(dots && { dots }), smears });
  }
  return { joints, notes };
}
