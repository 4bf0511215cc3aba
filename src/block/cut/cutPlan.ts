import type { Vertex } from '../../contour/vertex.js';
import type { CutFault } from './cutFault.js';

/** How all blocks come out of the sheets. */
export interface CutPlan {
  readonly sheets: readonly CutSheet[];
  /** Blocks that are not in the plan; each has its finding. */
  readonly leftOut: readonly string[];
  readonly faults: readonly CutFault[];
  /** Foam by foam, where all blocks of it are planned. */
  readonly foams: readonly FoamCount[];
  readonly sums: CutSums;
}

/** How many sheets of a foam are cut up, offcuts among them, and what is proved of that. */
export interface FoamCount {
  readonly foam: string;
  readonly sheets: number;
  /** Fewer cannot do. */
  readonly fewest: number;
  /** Whether it is proved that nothing cheaper can: less of new sheets, at less cost where their prices are known. */
  readonly isLeast: boolean;
}

/** Areas in mm². The three shares and the saw cuts make up the sheets' area. */
export interface CutSums {
  readonly sheetArea: number;
  readonly blockArea: number;
  readonly keptArea: number;
  /** Saw cuts, trimmings and rests too small to keep. */
  readonly wasteArea: number;
  /** In the builder's money; absent where the price of a sheet is unknown. */
  readonly price?: number;
  /** The least area of sheets that the blocks with their saw cuts could come from, were there no waste at all. */
  readonly leastSheetArea: number;
}

/**
 * One sheet: what is cut from it and in which order. The frame: `x` along the sheet's length, `y` along its width, mm,
 * from one corner.
 */
export interface CutSheet {
  /** Counted from 1. */
  readonly number: number;
  readonly stock: string;
  readonly foam: string;
  readonly length: number;
  readonly width: number;
  readonly blanks: readonly PlacedBlank[];
  readonly cuts: readonly Cut[];
  readonly offcuts: readonly Offcut[];
}

/** A rectangle as it comes off the saw: one block, or two tapered ones head to tail. */
export interface PlacedBlank {
  readonly x: number;
  readonly y: number;
  /** Along the sheet's length and width, mm. */
  readonly length: number;
  readonly width: number;
  readonly parts: readonly PlacedPart[];
  /** The slanting cut between the two of a pair, the middle of the saw cut. */
  readonly split?: { readonly from: Vertex; readonly to: Vertex; readonly angle: number };
}

export interface PlacedPart {
  readonly id: string;
  /** Four corners in the sheet's frame, counter-clockwise, from the lower corner of the head. */
  readonly outline: readonly Vertex[];
}

/** One cut from edge to edge of the piece in hand. */
export interface Cut {
  /** In the order of work, from 1 on each sheet. */
  readonly number: number;
  /** 0 squares the sheet; 1 to 3 are the stages. */
  readonly stage: number;
  /**
   * The piece that is cut, and what comes off at the fence: `2` is sheet 2, `2B` a strip of it, `2B3` a length of that.
   */
  readonly piece: string;
  readonly makes: string;
  /** Along the sheet's length, or across it. */
  readonly run: 'along' | 'across';
  /**
   * Between fence and blade, mm; absent for the first of two parallel squaring cuts, which has no square edge to run
   * on.
   */
  readonly fence?: number;
  /** The middle of the saw cut. */
  readonly from: Vertex;
  readonly to: Vertex;
}

/** A rest worth keeping. */
export interface Offcut {
  readonly id: string;
  readonly x: number;
  readonly y: number;
  readonly length: number;
  readonly width: number;
}
