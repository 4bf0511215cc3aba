import type { BoardSpec } from './board.js';
import type { Material } from './material.js';

/** The raw stock a board is made from. Lengths in mm. */
export interface RawStockSpec {
  readonly blank?: MouldedBlankSpec;
  /** What foam strips are sawn from where there is no moulded blank. */
  readonly billets: readonly PlankSpec[];
  readonly lumber: readonly PlankSpec[];
  readonly milling: MillingSpec;
  /** What must stand over the finished surface everywhere, so that it can be shaped. */
  readonly allowance: number;
  /** The most a power planer takes off in one pass. */
  readonly planer: number;
}

/** A moulded foam blank, sawn lengthwise into the strips of the glue-up. */
export interface MouldedBlankSpec {
  /** Described like a board; `x` from its nose end, `z` from its lowest bottom. */
  readonly shape: BoardSpec;
  /** What the saw takes at each cut. */
  readonly kerf: number;
  /** Where the builder lays the board in it; found where absent. */
  readonly place?: { readonly along: number; readonly up: number; readonly noseUp: number };
  /** Whether the strips may be slid and tilted against each other. */
  readonly slide: boolean;
  /** Strips that are sawn elsewhere than side by side, or slid against the others. */
  readonly strips: readonly StripSpec[];
  readonly price?: number;
}

/**
 * What the builder says of one strip of a moulded blank, and of its mirror image where both sides are alike and that is
 * not named.
 */
export interface StripSpec {
  /** `MR2`, as in `LaidMember`. */
  readonly strip: string;
  /** From the blank's centreline to its edge nearer to the centre, at the nose tip of the board. */
  readonly sawnAt?: number;
  /** How the strip of foam is slid against the others, as in `Slid`. */
  readonly slid?: { readonly along: number; readonly up: number; readonly noseUp: number };
}

/** Boards of lumber or billets of foam of one size. */
export interface PlankSpec {
  readonly material: Material;
  readonly length: number;
  readonly width: number;
  readonly thickness: number;
  /** Sold as: `1 x 8`; absent for actual sizes. */
  readonly nominal?: string;
  /** Of one, and by what thickness and width it is counted so, inches. */
  readonly boardFeet?: number;
  readonly counted?: readonly [thickness: number, width: number];
  /** Absent where more can be had. */
  readonly count?: number;
  /** Of one, in the builder's money. */
  readonly price?: number;
}

/** What is left over when stringers and strips are milled to their profiles, and how lumber is sawn. */
export interface MillingSpec {
  readonly above: number;
  readonly below: number;
  /** At nose and tail. */
  readonly ends: number;
  readonly kerf: number;
  /** Planed off each leaf where thicker stock is resawn. */
  readonly planing: number;
  /** Length of a scarf over the thickness it goes through. */
  readonly scarf: number;
}
