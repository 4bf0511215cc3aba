import { polygonAround } from '../contour/around.js';
import type { Point } from '../contour/point.js';
import type { Board } from '../board/board.js';
import type { Note } from '../chamber/chamber.js';
import type { Face } from '../layup/layup.js';
import type { PatchTrees } from '../wall/patchTree.js';
import { solidOf } from '../wall/solid.js';
import { thinnest } from '../wall/thinnest.js';
import type { Lines } from './jointFace.js';
import type { DotSpot } from './spot.js';

/** Straight sides that stand for a dot in the proof; they go around it. */
const SIDES = 16;
/** Thickness of the glue, mm. */
const FILM = 0.1;

/** A place on a face and the margin that a dot of the same size has there, mm. */
export interface Margin {
  readonly at: Point;
  readonly margin: number;
}

/**
 * The proved distance between a round dot on a face and the finished surface, mm: never more than there is; 0 or less
 * where they meet.
 *
 * @param known margins on the same face: a dot that is moved comes no further from the surface than it is moved
 */
export function marginOf(
  face: Face,
  [s, z]: Point,
  radius: number,
  { mesh }: Board,
  trees: PatchTrees,
  known: readonly Margin[] = [],
): number {
  const around = polygonAround([s, z], radius, SIDES);
  let expected = Infinity;
  for (const { at, margin } of known)
    expected = Math.min(expected, Math.abs(margin + mesh.chordError) + Math.hypot(at[0] - s, at[1] - z));
  const { distance } = thinnest(solidOf(face, around, [0, FILM]), [trees.deck, trees.bottom, trees.rail], expected);
  return distance - mesh.chordError;
}

/**
 * What must be said of a dot that is where it is: it does not lie on its face, or too near to the finished surface;
 * undefined when all is well.
 */
export function brokenMargin({ name, from: [at], margin: has }: DotSpot, needs: number): Note | undefined {
  if (has >= needs) return undefined;
  const said = { kind: 'glue', where: name, by: [], at, has } as const;
  return has > 0 ? { ...said, why: 'margin', needs } : { ...said, why: 'off-face' };
}

/** Whether a place lies on a joint's face between two lines. */
export function isBetween({ top, bottom }: Lines, [s, z]: Point): boolean {
  return z < top(s) && z > bottom(s);
}
