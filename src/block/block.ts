import type { Vertex } from '../contour/vertex.js';
import type { Proud } from './proud.js';

/** The piece of light foam that fills one chamber. */
export interface Block {
  /** The chamber's number. */
  readonly id: string;
  readonly row: string;
  readonly outline: readonly Vertex[];
  /** Of the smallest rectangle around the outline along and across the face, mm. */
  readonly length: number;
  readonly height: number;
  /** Into the piece, mm. */
  readonly thickness: number;
  /** Litres. */
  readonly volume: number;
  readonly weight: number;
  /**
   * As it is cut: of one thickness, with the fit and the corners that the builder wants; what is above fills the
   * chamber exactly.
   */
  readonly made: MadeBlock;
  /**
   * The shared guide its chamber is routed with: all blocks of one guide have one outline, turned with their chambers.
   */
  readonly guide?: string;
  /** What stands out of the far face and is planed off; absent where nothing does. */
  readonly proud?: Proud;
}

/** Fields as in `Block`. */
export interface MadeBlock {
  readonly outline: readonly Vertex[];
  readonly length: number;
  readonly height: number;
  readonly thickness: number;
  readonly volume: number;
  readonly weight: number;
}
