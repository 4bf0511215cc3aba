import type { Board } from '../../src/board/board.js';
import { meshOf } from '../../src/board/mesh.js';
import { vertexNormalsOf } from '../../src/board/vertexNormals.js';
import { sharedPoints } from '../../src/board/weld.js';
import type { GlueUpSpec, MemberWithJoint } from '../../src/job/job.js';
import { patchTreesOf } from '../../src/wall/patchTree.js';
import { gridBy, surfaceBy, type Formulas } from '../board/formulas.js';
import { specWith } from './box.js';

/** A slab 1200 mm long, 300 mm to each side, from height 5 to 95: every wall of a chamber is a difference by hand. */
export const [LENGTH, HALF, LOW, HIGH] = [1200, 300, 5, 95];
/** Rows and columns stand close together: between them the room is drawn straight. */
const stations = Array.from({ length: 61 }, (_, i) => 20 * i);
const columns = Array.from({ length: 61 }, (_, i) => i / 20);
export const slab: Formulas = { length: LENGTH, stations, half: () => HALF, bottom: () => LOW, thickness: HIGH - LOW };
export function boardBy(given: Formulas): Board {
  const surface = surfaceBy(given);
  const drawn = gridBy(surface, stations, columns);
  const grid = { ...drawn, same: sharedPoints(drawn), chordError: 0 };
  const mesh = meshOf(grid);
  return {
    surface,
    grid,
    mesh,
    vertexNormals: vertexNormalsOf(grid, mesh),
    proved: mesh,
    rough: 0,
    length: surface.length,
    width: 2 * HALF,
    thickness: HIGH - LOW,
    volume: (2 * HALF * (HIGH - LOW) * LENGTH) / 1e6,
    area: (2 * HALF * LENGTH) / 1e6,
  };
}
export const board = boardBy(slab);
export const trees = patchTreesOf(board.mesh);

const foam = { name: 'foam', density: 20, source: '' };
export const open = (more: Partial<MemberWithJoint> = {}): MemberWithJoint => ({
  kind: 'strip',
  material: foam,
  routing: 'open',
  joint: 'dotted',
  ...more,
});
export const halves: GlueUpSpec = { centreJoint: 'dotted', right: [open()] };
export const spec = specWith({
  pitch: 300,
  datum: 150,
  stagger: 0.5,
  web: 40,
  deckSkin: 12,
  bottomSkin: 10,
  railWall: 30,
  floor: 8,
  tolerance: 1,
  solidNose: 60,
  solidTail: 80,
});
