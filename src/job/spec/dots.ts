/** How the blank is spot-glued, and, once it is, where the glue went. */
export interface DotSpec {
  /** Of a dot when the joint is pressed, mm. */
  readonly diameter: number;
  /** From a dot's edge to the finished surface, at least, mm. */
  readonly margin: number;
  /** From a dot's edge to any chamber open to its joint, at least, mm. */
  readonly clearance: number;
  /** Between neighbouring dots, middle to middle, at most, mm. */
  readonly spacing: number;
  /** From either end of where a joint can hold a dot to the nearest one, at most, mm. */
  readonly nearEnd: number;
  /** What a chamber in a dot's way may suffer. Dots in solid ends and shared webs are always allowed. */
  readonly may: readonly DotWay[];
  readonly blank: BlankSpec;
  /** Joints that are glued already. */
  readonly glued: readonly GluedJointSpec[];
}

/**
 * `trim` – made shorter; `split` – parted in two around the dot; `swallow` – the dot lies wholly inside the chamber and
 * is routed away; `stagger` – a row is shifted so that its webs meet its neighbour's.
 */
export type DotWay = 'trim' | 'split' | 'swallow' | 'stagger';

/** The rough blank, a box around the board: how far it stands out, mm. */
export interface BlankSpec {
  readonly nose: number;
  readonly tail: number;
  /** From its underside up to the lowest point of the board's bottom. */
  readonly below: number;
  /** From its underside to its top; absent where it is not known. */
  readonly thickness?: number;
}

/** Where the glue of one joint really went. */
export interface GluedJointSpec {
  /** As in `Joint`: `JL2`, `JC`, `JR1`. */
  readonly joint: string;
  /** All dots of the joint, in place of the planned ones; absent where it holds the dots as planned. */
  readonly dots?: readonly (GluedPoint & { readonly diameter: number })[];
  readonly smears: readonly { readonly from: GluedPoint; readonly to: GluedPoint; readonly width: number }[];
}

export interface GluedPoint {
  /** From the nose tip, straight, mm. */
  readonly x: number;
  /** How high it lies; absent for the middle of the face. */
  readonly height?: GluedHeight;
}

/**
 * A height as it was measured, mm: over the lowest point of the board's bottom, over the finished bottom at this place,
 * or under the deck there.
 */
export type GluedHeight = { readonly z: number } | { readonly overBottom: number } | { readonly underDeck: number };
