import type { BoardSpec } from './spec/board.js';
import type { Material } from './spec/material.js';
import type { Point } from '../contour/point.js';
import type { Units } from '../length/units.js';
import type { BlocksSpec } from './spec/blocks.js';
import type { DotSpec } from './spec/dots.js';
import type { Doubt } from './finding.js';
import type { FinSpec, FittingSpec, GlassSpec, LaminatingSpec, TargetSpec, WeighingSpec } from './spec/finish.js';
import type { RoutedRow } from './spec/routed.js';
import type { RoutingSpec } from './spec/routing.js';
import type { RawStockSpec } from './spec/stock.js';
import type { ShapedSpec } from './spec/shaped.js';

/**
 * A job as the computation takes it: checked, complete with defaults, millimetres and kilograms throughout.
 * The file on disk is another matter (`read.ts`): there, lengths carry units and most things may be left out.
 */
export interface Job {
  readonly name: string;
  /** How lengths and weights are written for people. Inside, everything is in millimetres and kilograms. */
  readonly units: Units;
  readonly board: BoardSpec;
  readonly glueUp: GlueUpSpec;
  readonly chambers: ChamberSpec;
  readonly keepOuts: readonly KeepOutSpec[];
  /** Keep-outs drawn on a joint, where its faces will be. */
  readonly jointKeepOuts: readonly JointKeepOutSpec[];
  readonly dots: DotSpec;
  readonly routing: RoutingSpec;
  /** What was measured after shaping; absent for the board as drawn. */
  readonly shaped?: readonly ShapedSpec[];
  /**
   * Rows that are routed: every plan keeps their chambers as they were planned then. Absent where the job names no file
   * of them.
   */
  readonly routed?: readonly RoutedRow[];
  readonly fill: Material;
  /** How the blocks are cut and glued in. */
  readonly blocks: BlocksSpec;
  /** What it is made from; absent where the job does not say. */
  readonly stock?: RawStockSpec;
  /** What goes over the bare board; the usual where the job says nothing. */
  readonly glass?: GlassSpec;
  /** How it is laid on; the usual where the job says nothing. */
  readonly laminating?: LaminatingSpec;
  readonly fins?: readonly FinSpec[];
  readonly fittings?: readonly FittingSpec[];
  /** What the scale said so far, in the order of the work. */
  readonly weighings?: readonly WeighingSpec[];
  /** Weight of whoever rides it, kg. */
  readonly rider?: number;
  readonly target?: TargetSpec;
  /** What can be, but hardly is: told wherever the plan is told. Absent where nothing is. */
  readonly doubts?: readonly Doubt[];
  /** What the printer makes of a true length: measured over true; exact where the job says nothing. */
  readonly printer?: { readonly across: number; readonly along: number };
}

export type { Units };

/** The glue-up from the centreline outward. */
export interface GlueUpSpec {
  /** A member that straddles the centreline; absent where a joint runs along it. */
  readonly centre?: Member;
  /** How the two halves meet when there is no centre member. */
  readonly centreJoint: JointKind;
  /** Outward from the centre; the last one runs to the rail. */
  readonly right: readonly MemberWithJoint[];
  /** Absent when the left is the mirror image of the right. */
  readonly left?: readonly MemberWithJoint[];
}

export type JointKind = 'bonded' | 'dotted';

export interface Member {
  readonly kind: 'strip' | 'stringer';
  readonly material: Material;
  /** Whether the router may go into it. */
  readonly routing: 'open' | 'solid';
  /**
   * Across the member, mm. One number for a member of one thickness (measured square to its inner joint); two for a
   * strip that tapers, measured across the board at `x` = 0 and `x` = length. For the centre member the whole
   * thickness; for the outermost member of a side absent: it runs to the rail.
   */
  readonly thickness?: number | { readonly nose: number; readonly tail: number };
}

/** A member and the joint on its inner side, toward the centreline. */
export interface MemberWithJoint extends Member {
  readonly joint: JointKind;
}

export type ProfileShape = 'follow' | 'straight' | 'square';

export interface ChamberSpec {
  /** Between chamber centres along the face, mm. */
  readonly pitch: number;
  /** Distance of the first grid mark from the nose tip, mm. */
  readonly datum: number;
  /** How far odd rows are shifted, as a share of the pitch (0..1). */
  readonly stagger: number;
  /** Solid between neighbours of a row, mm, at its narrowest. */
  readonly web: number;
  readonly deckSkin: number;
  readonly bottomSkin: number;
  readonly railWall: number;
  /** Left before a solid member, mm. */
  readonly floor: number;
  /** Added to every wall because a router wanders, mm. */
  readonly tolerance: number;
  readonly shape: ProfileShape;
  readonly cutterDiameter: number;
  /**
   * The smallest chamber worth routing, mm: length along the face; height upright from its bottom edge to its top edge,
   * where it is lowest, before its corners are eased; depth into the piece.
   */
  readonly smallest: { readonly length: number; readonly height: number; readonly depth: number };
  /** No chamber nearer to the nose tip or the tail than this, mm. */
  readonly solidNose: number;
  readonly solidTail: number;
}

/** A region of the plan that no chamber may enter: right through the board, or only as deep as `depth` says. */
export type KeepOutSpec = {
  readonly name: string;
  /** Square to the waterline from the finished deck or bottom, mm; absent where it goes right through. */
  readonly depth?: { readonly from: 'deck' | 'bottom'; readonly deep: number };
} & (
  | { readonly kind: 'disc'; readonly x: number; readonly y: number; readonly radius: number }
  | {
      readonly kind: 'rectangle';
      readonly x: number;
      readonly y: number;
      readonly length: number;
      readonly width: number;
    }
  /** A closed outline, `[x, y]` corners, mm. */
  | { readonly kind: 'polygon'; readonly points: readonly Point[] }
);

/** A region of a joint that no chamber open to it may enter. */
export interface JointKeepOutSpec {
  readonly name: string;
  /** As in `Joint`: `JL2`, `JC`, `JR1`. */
  readonly joint: string;
  /** A closed outline: `x` from the nose tip, straight, and height `z`, mm. */
  readonly points: readonly (readonly [x: number, z: number])[];
}
