import type { Scan } from '../../scan/whole/scan.js';

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
  /** The left side's, where they are not the right side's. */
  readonly leftSections?: readonly SectionStation[];
  /** The mesh that all this was taken from; absent where it was given by numbers. */
  readonly scan?: Scan;
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
