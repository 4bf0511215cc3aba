/** How one row is routed: with the cutter, bush and guide stock of the job. All mm. */
export interface RowRouting {
  readonly row: string;
  /** The face the router stands on; a second one where the row is routed from both to meet in the middle. */
  readonly from: readonly string[];
  /** Of the deepest chamber. */
  readonly depth: number;
  /** How deep the deepest chamber is cut from each of these faces. */
  readonly cut: number;
  /** How far the cutter stands out of the router's base for each pass: the stock of the guide and the depth so far. */
  readonly stops: readonly number[];
  readonly reaches: boolean;
  /** The cutter length that would do, where this one does not reach. */
  readonly needs?: number;
  readonly chambers: readonly ChamberRouting[];
}

export interface ChamberRouting {
  readonly chamber: string;
  /** The face it is cut from; a second one where it is cut from both to meet in the middle. */
  readonly from: readonly string[];
  /** How deep it is cut from each, mm. */
  readonly cut: number;
  readonly stops: readonly number[];
}

/** A guide that serves several chambers: a rectangle with eased corners. All mm. */
export interface Guide {
  /** `G1`, `G2`: largest first. */
  readonly id: string;
  /** What the cutter leaves. */
  readonly cut: { readonly length: number; readonly height: number; readonly corner: number };
  /** The hole in the guide. */
  readonly opening: { readonly length: number; readonly height: number; readonly corner: number };
  readonly chambers: readonly string[];
}

/**
 * Where a guide is set for one chamber: its middle in the frame of the row's face, and how far its length is turned,
 * counter-clockwise. What is measured (`s`, `overBottom`, the turn) stands on whole steps of the rule, so that what is
 * read is what was proved.
 */
export interface GuideSetting {
  readonly chamber: string;
  readonly guide: string;
  readonly s: number;
  readonly z: number;
  /** Over the finished bottom line at `s`, mm. */
  readonly overBottom: number;
  readonly tiltInDegrees: number;
}

/**
 * What so many guides lose at best of what the chambers could hold, litres. No choice of guides of this shape loses
 * less than `bound`.
 */
export interface CurvePoint {
  readonly guides: number;
  readonly lost: number;
  readonly bound: number;
}

export interface Routing {
  readonly rows: readonly RowRouting[];
  /** How much larger than the cut an opening is on every side. */
  readonly offset: number;
  /** Shared guides; empty where every chamber has its own. */
  readonly guides: readonly Guide[];
  readonly settings: readonly GuideSetting[];
  /** Loss against number of guides; empty where none are shared. */
  readonly curve: readonly CurvePoint[];
}
