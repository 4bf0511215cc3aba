import { oversizeBlocks } from './blocks.js';
import type { Fault } from './fault.js';
import { nearGlue, nearSurface } from './glue.js';
import { inKeepOuts } from './keepOuts.js';
import { beyondTheCutter, inSolidEnds, thinFloors, thinWebs, tooSmall } from './pockets.js';
import { routedChambers, type Published } from './published.js';
import { sortedMesh } from './surface.js';

/**
 * Proves of a finished plan what is not a wall: solid ends, keep-outs with their depth, webs, floors, corners, smallest
 * sizes, margins and clearances of glue, and blocks. It knows what the plan publishes and the rules of its job, and
 * shares no code with what made it; the walls are proved by `thinWalls.ts`. Nothing comes back where the plan stands.
 */
export function faultsOf(published: Published): Fault[] {
  const routed = routedChambers(published);
  const surface = sortedMesh(published.board.proved);
  return [
    ...inSolidEnds(routed, published),
    ...inKeepOuts(routed, published, surface),
    ...thinWebs(routed, published),
    ...thinFloors(routed, published),
    ...beyondTheCutter(routed, published),
    ...tooSmall(routed, published),
    ...nearSurface(published, surface),
    ...nearGlue(routed, published),
    ...oversizeBlocks(routed, published),
  ];
}
