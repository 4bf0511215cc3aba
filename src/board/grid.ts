/**
 * The surface as a grid of points: rows across the board, nose to tail, and columns around each half from the keel over
 * the apex to the deck's centreline. Rows and columns lie as close as the surface bends, and are split until every
 * cell, measured, lies within `chordError` of it.
 *
 * Layout: point (row, side, column) is number `(row · 2 + side) · columns + column`; its x, y, z stand at three times
 * that number.
 */
export interface Grid {
  readonly xs: Float64Array;
  /** Places around the half-section, `v` of `Section`. */
  readonly vs: Float64Array;
  readonly rows: number;
  readonly columns: number;
  /** The column of the rail apex. */
  readonly apex: number;
  readonly positions: Float64Array;
  /** For every point the number of the one that stands for it; see `weld.ts`. */
  readonly same: Uint32Array;
  /** Row from which a notch parts the two halves; `rows` where there is none. */
  readonly notchRow: number;
  /** How far the smooth surface may lie from the flats between its points, mm. */
  readonly chordError: number;
}

/** How far the smooth surface may lie from the mesh, mm. Every wall is reported thinner by this much. */
export const CHORD_ERROR = 0.05;
