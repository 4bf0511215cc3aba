import type { Point } from '../contour/point.js';

/** One spot of glue on a dotted joint. `s` and `z` in the frame of the joint's faces, mm. */
export interface Dot {
  /** `DR2.3`: its joint, and its place counted from the nose. */
  readonly id: string;
  /** `JR2`. */
  readonly joint: string;
  readonly s: number;
  readonly z: number;
  /** From the nose tip, straight, mm. */
  readonly x: number;
  readonly diameter: number;
  /** Where it really is, as the job says; otherwise where it is planned. */
  readonly glued: boolean;
  /** Proved distance to the finished surface, mm: no more than there is. */
  readonly margin: number;
  readonly sides: readonly GlueSide[];
}

/** Glue where none was meant, as broad as `width` from one place to another, rounded at its ends. Frame as in `Dot`. */
export interface Smear {
  /** `SR2.1`. */
  readonly id: string;
  readonly joint: string;
  readonly from: Point;
  readonly to: Point;
  readonly width: number;
  readonly sides: readonly GlueSide[];
}

/** What glue meets on one of a joint's two sides. */
export interface GlueSide {
  readonly row: string;
  readonly way: GlueWay;
  /** The chambers beside it: before it, behind it, or around it. */
  readonly chambers: readonly string[];
}

/**
 * `end` – before the row's first chamber or behind its last; `web` – between two places; `trimmed` – the same, and one
 * was made shorter for it; `split` – between the halves of one place; `passed` – a chamber goes under or over it;
 * `swallowed` – it lies wholly inside a chamber.
 */
export type GlueWay = 'end' | 'web' | 'trimmed' | 'split' | 'passed' | 'swallowed';

/** What glue cost one place of a row, litres of chamber. */
export interface GlueLoss {
  readonly row: string;
  /** The place: `R2-07`. */
  readonly place: string;
  readonly by: readonly string[];
  readonly before: number;
  readonly after: number;
}

/** All glue on the dotted joints, joints left to right, each from nose to tail. */
export interface Glue {
  readonly dots: readonly Dot[];
  readonly smears: readonly Smear[];
  readonly losses: readonly GlueLoss[];
}
