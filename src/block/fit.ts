import { easeCorners } from '../contour/ease.js';
import { movedEdges } from '../contour/offset.js';
import { sharpCorners } from '../contour/sharp.js';
import { straight } from '../contour/straight.js';
import type { BlocksSpec } from '../job/spec/blocks.js';
import type { Vertex } from '../contour/vertex.js';

/** How a block's outline is made from its chamber's. */
export interface Fit extends Pick<BlocksSpec, 'fit' | 'corners'> {
  /** mm; what the chamber's corners are eased to. */
  readonly cutterRadius: number;
}

/**
 * The outline a block is cut to: its chamber's contour with every edge moved out by the fit, in where it is negative,
 * its corners eased alongside or left square. Frame of the contour, counter-clockwise, mm.
 * @throws where the clearance leaves nothing; a job that asks for so much is refused when it is read
 */
export function fitted(chamber: readonly Vertex[], { fit, corners, cutterRadius }: Fit): readonly Vertex[] {
  if (fit === 0 && corners === 'eased') return chamber;
  const moved = movedEdges(sharpCorners(chamber), fit);
  const radius = corners === 'eased' ? cutterRadius + fit : 0;
  const eased = radius > 0 ? easeCorners(moved, radius) : undefined;
  // Corners too short for the arc stay sharp: more is left to sand, never too little.
  return eased?.contour ?? straight(moved);
}
