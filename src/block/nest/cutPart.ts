/** A block as the saw sees it: the rectangle it is cut from, its foam, and how its long edges taper. */
export interface CutPart {
  /** The block's number. */
  readonly id: string;
  /** Which foam and thickness it is cut from; only stock with the same word serves it. */
  readonly foam: string;
  /**
   * Of the smallest rectangle around the block as it is to be cut, mm; `length` runs with the grain where there is one.
   */
  readonly length: number;
  readonly height: number;
  /** Whether it may lie across the sheet: no, where the material has a grain. */
  readonly mayTurn: boolean;
  /** Absent where the long edges are parallel to the rectangle. */
  readonly taper?: Taper;
}

/**
 * How far the two long edges lean in from the head (`x` = 0) to the tail (`x` = `length`), mm; negative where they open
 * out.
 */
export interface Taper {
  /** How much the upper edge falls. */
  readonly top: number;
  /** How much the lower edge rises. */
  readonly bottom: number;
}

/** Sheets or billets of one size that the shop has or can buy. */
export interface CutStock {
  readonly id: string;
  readonly foam: string;
  /** mm; `length` runs with the grain where there is one. */
  readonly length: number;
  readonly width: number;
  /** How many there are; absent where more can be had. */
  readonly count?: number;
  /** For one, in the builder's money; absent where unknown. */
  readonly price?: number;
  /** Left over from earlier: used up before a new sheet is begun. */
  readonly offcut?: boolean;
}

/** What the saw (or the hot wire) takes, and what is worth keeping. */
export interface SawSetting {
  /** Width of the cut, mm. */
  readonly kerf: number;
  /** Taken off each of the four edges of a sheet to square it, its saw cut included, mm. */
  readonly trim: number;
  /** The smallest rest worth keeping, mm, whichever way round. */
  readonly keep: { readonly length: number; readonly width: number };
}

/** The longest chain of cuts, each square to the one before, that a block goes through: rip, cross-cut, rip. */
export const STAGES = 3;

/** Two sizes nearer than this are one size to a saw, mm: a tenth of what a fence can be set to. */
export const SAME_SIZE = 0.01;

/** A blank may stand over its place by this, mm: what adding up sizes rounds off, nothing a rule could show. */
export const ROUNDING = 1e-6;
