import type { JointKind, Member } from '../job/job.js';
import type { FaceSide, FromCentre, Side } from '../job/names.js';

/** A straight joint in plan: `y = at + slope · x`, board frame, mm. Infinitely long; the board's outline ends it. */
export interface Joint extends FromCentre {
  /** `JL2`, `JC`, `JR1`: side, then the place counted from the centre outward. */
  readonly id: string;
  readonly kind: JointKind;
  readonly at: number;
  readonly slope: number;
}

/** A member in its place: between an inner and an outer joint, left to right in rising `y`. */
export interface LaidMember extends Member, FromCentre {
  /** `ML2`, `MC`, `MR1`: side, then the place counted from the centre outward. */
  readonly id: string;
  /** The joint on the member's left; absent where the left rail ends it. */
  readonly left?: Joint;
  /** The joint on the member's right; absent where the right rail ends it. */
  readonly right?: Joint;
}

export type { FaceSide, Side };

/** What is in the hand after the dotted joints are broken: members bonded together. */
export interface Piece extends FromCentre {
  /** `PL1`, `PC`, `PR2`: side, then the place counted from the centre outward. */
  readonly id: string;
  readonly members: readonly LaidMember[];
}

/**
 * A side of a piece where a dotted joint was, with its own frame: `s` along the face from the nose end, `z` up, `t`
 * into the piece. Board = origin + s·along + t·inward, z unchanged. `origin` lies at `x` = 0.
 */
export interface Face {
  /** The piece and which side of it: `FL1-in`, `FR2-out`, `FC-left`. */
  readonly id: string;
  readonly on: FaceSide;
  readonly piece: string;
  readonly joint: string;
  readonly origin: readonly [number, number];
  readonly along: readonly [number, number];
  readonly inward: readonly [number, number];
}

/** The chambers routed from one face into one piece. */
export interface Row extends FromCentre {
  /** `L1`, `C1`, `R2`: side, then the row counted from the centre outward. */
  readonly id: string;
  readonly piece: string;
  readonly face: Face;
  /** The face on the far side when the row is routed right through; absent for a blind row. */
  readonly through?: Face;
  /** The members the row runs through, in the order the cutter meets them. */
  readonly members: readonly LaidMember[];
  /** What ends the row: the far face, a solid member (a floor is left before it) or the rail. */
  readonly end: 'face' | 'solid' | 'rail';
  /** 0 or 1: whether the row sits on the grid marks or is shifted by the stagger. */
  readonly parity: 0 | 1;
}

/** The glue-up laid out on the board. */
export interface Layup {
  /** Left to right. */
  readonly joints: readonly Joint[];
  readonly members: readonly LaidMember[];
  readonly pieces: readonly Piece[];
  /** From the left rail to the right rail. */
  readonly rows: readonly Row[];
}
