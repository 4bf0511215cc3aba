import type { Vertex } from '../length/vertex.js';

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
}
