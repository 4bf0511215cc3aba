import { PATCHES, type Patch } from '../board/mesh.js';
import type { Row } from '../layup/layup.js';
import type { Chamber } from '../chamber/chamber.js';
import type { PatchTrees } from '../wall/patchTree.js';
import { solidOf } from '../wall/solid.js';
import { wallsOf } from '../wall/walls.js';

/** A wall thinner than it must be. */
export interface ThinWall {
  readonly chamber: string;
  readonly patch: Patch;
  /** What is certainly there, and what was asked, mm. */
  readonly wall: number;
  readonly asked: number;
  /** The thinnest place on the finished surface, board frame, mm. */
  readonly at: readonly [x: number, y: number, z: number];
}

/**
 * Proves finished chambers against a surface, knowing nothing of how they were made: every wall thinner than asked.
 */
export function thinWalls(
  chambers: readonly Chamber[],
  rows: readonly Row[],
  trees: PatchTrees,
  chordError: number,
  asked: Readonly<Record<Patch, number>>,
): ThinWall[] {
  const faces = new Map(rows.map((row) => [row.id, row.face]));
  return chambers.flatMap((chamber) => {
    const walls = wallsOf(solidOf(faces.get(chamber.row)!, chamber.profile, chamber.depth), trees, chordError);
    return PATCHES.filter((patch) => !(walls.thickness[patch] >= asked[patch])).map((patch) => ({
      chamber: chamber.id,
      patch,
      wall: walls.thickness[patch],
      asked: asked[patch],
      at: walls.places[patch].onSurface,
    }));
  });
}
