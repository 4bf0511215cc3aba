/** How blocks are cut, from what, and how they are glued in. Lengths in mm. */
export interface BlocksSpec {
  /**
   * How much larger than its chamber a block is all around its outline: oversize to sand; negative is clearance for
   * glue.
   */
  readonly fit: number;
  /** Corners of the cutter's radius, as the chamber has them, or as the saw leaves them. */
  readonly corners: 'eased' | 'square';
  /** What there is to cut from; empty where nothing is listed, and then no cuts are planned. */
  readonly stock: readonly StockSpec[];
  /** Width of a saw cut or of the gap a hot wire melts. */
  readonly kerf: number;
  /** Taken off each edge of a sheet to square it, its saw cut included. */
  readonly trim: number;
  /** Whether the foam has a grain along its sheets, which the blocks must then follow. */
  readonly grain: boolean;
  /** The smallest rest worth keeping. */
  readonly keep: { readonly length: number; readonly width: number };
  readonly glue: BlockGlueSpec;
}

/** Sheets or billets of one size. */
export interface StockSpec {
  readonly length: number;
  readonly width: number;
  readonly thickness: number;
  /** Absent where more can be had. */
  readonly count?: number;
  /** For one, in the builder's money. */
  readonly price?: number;
  /** Left over from earlier: used up first. */
  readonly offcut: boolean;
}

export interface BlockGlueSpec {
  /** To spread, set and clamp one block, minutes. */
  readonly minutesPerBlock: number;
  /** From the first glue spread to the last clamp tight, minutes. */
  readonly openTime: number;
  /** g/m². */
  readonly spread: number;
  /** What stays in the cup and on the brush, as a share of what is spread. */
  readonly loss: number;
  /** Between clamps along the face, at most. */
  readonly clampSpacing: number;
}
