import type { Board } from '../board/board.js';
import type { Face } from '../layup/layup.js';
import type { PatchTrees } from '../wall/patchTree.js';
import { solidOf } from '../wall/solid.js';
import { thinnest } from '../wall/thinnest.js';
import type { Pair } from './spot.js';

/** Straight sides that stand for a dot in the proof; they go around it. */
const SIDES = 16;
/** Thickness of the glue, mm. */
const FILM = 0.1;

/** The proven distance between a round dot on a face and the finished surface, mm: never more than there is; 0 or less where they meet. */
export function marginOf(face: Face, [s, z]: Pair, radius: number, { mesh }: Board, trees: PatchTrees): number {
  const far = radius / Math.cos(Math.PI / SIDES);
  const around = Array.from({ length: SIDES }, (_, i): Pair => {
    const angle = (2 * Math.PI * (i + 0.5)) / SIDES;
    return [s + far * Math.cos(angle), z + far * Math.sin(angle)];
  });
  const { distance } = thinnest(solidOf(face, around, [0, FILM]), [trees.deck, trees.bottom, trees.rail]);
  return distance - mesh.chordError;
}
