import type { Material } from './spec/material.js';
import type { Point } from '../contour/point.js';
import type { Units } from '../length/units.js';
import type { BlocksSpec } from './spec/blocks.js';
import type { DotSpec } from './spec/dots.js';
import type { Doubt } from './finding.js';
import type { FinSpec, FittingSpec, GlassSpec, TargetSpec, WeighingSpec } from './spec/finish.js';
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

/** The finished, unglassed board. */
export interface BoardSpec {
  /** From nose tip to the hindmost point of the tail, straight, mm. */
  readonly length: number;
  readonly right: OutlineSpec;
  /** Absent when the board is the same on both sides. */
  readonly left?: OutlineSpec;
  /** What was measured along the centreline, nose to tail, strictly rising in `x`. At least two. */
  readonly profile: readonly ProfileStation[];
  /** The sections, nose to tail, strictly rising in `x`. At least one; a single one serves the whole board. */
  readonly sections: readonly SectionStation[];
}

/** One side's outline in plan: half-widths measured from the centreline, positive outward. */
export interface OutlineSpec {
  readonly nose: NoseShape;
  readonly tail: TailShape;
  /** Measured points from nose to tail, `x` strictly rising within the board; the tips belong to the shapes. */
  readonly points: readonly PlanPoint[];
}

export interface PlanPoint {
  /** From the nose tip, mm. */
  readonly x: number;
  /** From the centreline outward, mm. */
  readonly half: number;
}

/** How the outline leaves the nose tip: stood up across the board, running to a point, or cut straight across. */
export type NoseShape =
  { readonly kind: 'round' } | { readonly kind: 'pointed' } | { readonly kind: 'square'; readonly half: number };

/**
 * How the outline ends. `square` is cut straight across at `half`; `squash` the same with corners eased over `corner`
 * mm; `swallow` has its tips at `half` from the centreline and a notch of `depth` mm between them, its sides straight.
 */
export type TailShape =
  | { readonly kind: 'pin' }
  | { readonly kind: 'round' }
  | { readonly kind: 'square'; readonly half: number }
  | { readonly kind: 'squash'; readonly half: number; readonly corner: number }
  | { readonly kind: 'swallow'; readonly half: number; readonly depth: number };

export interface ProfileStation {
  readonly x: number;
  /** Height of the bottom on the centreline above the lowest point of it (the rocker), mm. */
  readonly bottom: number;
  /** Thickness on the centreline, mm. Above 0 except at the very tips. */
  readonly thickness: number;
}

export type SectionStation = { readonly x: number } & SectionShape;
export type SectionShape = NumberedSection | MeasuredSection;

/** A section by a few numbers that can be measured with a square and a rule. */
export interface NumberedSection {
  readonly kind: 'numbers';
  /** Height of the rail apex over the bottom at the centreline, as a share of the centre thickness (0..1). */
  readonly apex: number;
  /**
   * Fullness of the rail above the apex: how far out along the diagonal of its box it reaches. 0.5 a straight chamfer,
   * 0.71 an ellipse, towards 1 a box.
   */
  readonly above: number;
  /** The same below the apex. */
  readonly below: number;
  /** How far the deck would fall from the centreline to the rail line without the rail's own turn, mm. */
  readonly crown: number;
  /** The bottom from the centreline to the rail line, before the rail turns up. `depth` in mm, all positive. */
  readonly bottom: { readonly kind: 'flat' } | { readonly kind: 'concave' | 'roll' | 'vee'; readonly depth: number };
  /** Width of the flat bevel between a hard edge in the bottom and the apex, mm; absent where the rail is soft. */
  readonly bevel?: number;
}

/** A section as measured: points from the keel out to the rail apex and on over the deck to the centreline. */
export interface MeasuredSection {
  readonly kind: 'points';
  /** `y` from the centreline outward, `z` over the bottom at the centreline, mm. First and last have `y` = 0. */
  readonly points: readonly { readonly y: number; readonly z: number; readonly edge: boolean }[];
}

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
