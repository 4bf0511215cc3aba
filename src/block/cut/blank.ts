import type { Vertex } from '../../contour/vertex.js';
import type { CutPart } from '../nest/cutPart.js';

/** A rectangle to be cut from a sheet, with the one or two blocks in it. */
export interface Blank {
  /** mm, no saw cut added. */
  readonly length: number;
  readonly height: number;
  readonly mayTurn: boolean;
  readonly parts: readonly { readonly part: CutPart; readonly outline: readonly Vertex[] }[];
  /** The slanting cut between two blocks, the middle of it; its angle to the length in radians. */
  readonly split?: { readonly from: Vertex; readonly to: Vertex; readonly angle: number };
}

/** The blank of a block by itself. */
export function singleBlank(part: CutPart): Blank {
  const { length, height, mayTurn } = part;
  return { length, height, mayTurn, parts: [{ part, outline: partOutline(part) }] };
}

/** The four corners of a block in its rectangle, counter-clockwise from the lower corner of the head, mm. */
export function partOutline({ length, height, taper }: CutPart): Vertex[] {
  const { top, bottom } = taper ?? { top: 0, bottom: 0 };
  const low = Math.max(0, -bottom);
  const high = height + Math.min(0, top);
  return [
    { x: 0, y: low },
    { x: length, y: low + bottom },
    { x: length, y: high - top },
    { x: 0, y: high },
  ];
}

/** The same corners with the block turned end for end in its rectangle. */
export function turnedEndForEnd(part: CutPart): Vertex[] {
  return partOutline(part).map(({ x, y }) => ({ x: part.length - x, y: part.height - y }));
}
