import { PATCHES, type Patch } from '../board/mesh.js';
import type { PatchTrees } from './patchTree.js';
import type { Solid } from './solid.js';
import { distanceTo, thinnest, type BoardPoint, type Thinnest } from './thinnest.js';

/** The proved walls of one chamber: what is certainly there toward each patch, mm, and where it is thinnest. */
export interface Walls {
  readonly thickness: Readonly<Record<Patch, number>>;
  readonly places: Readonly<Record<Patch, Thinnest>>;
}

/** A point on each patch. */
export type Places = Readonly<Record<Patch, BoardPoint>>;

/** Where on the surface each wall is thinnest. */
export function onSurface({ places: { deck, bottom, rail } }: Walls): Places {
  return { deck: deck.onSurface, bottom: bottom.onSurface, rail: rail.onSurface };
}

/**
 * Proves the walls of a chamber against the finished surface. The mesh may lie outside the smooth surface by
 * `chordError`, so every wall is given thinner by that much: a true lower bound.
 *
 * @param near points of the surface that are thought to be near the thinnest places: they change nothing but the time
 *   it takes
 */
export function wallsOf(solid: Solid, trees: PatchTrees, chordError: number, near?: Places): Walls {
  const entries = PATCHES.map(
    (patch) => [patch, thinnest(solid, [trees[patch]], near && distanceTo(solid, near[patch]))] as const,
  );
  const each = <T>(pick: (place: Thinnest) => T) =>
    Object.fromEntries(entries.map(([patch, place]) => [patch, pick(place)])) as Record<Patch, T>;
  return { thickness: each((place) => place.distance - chordError), places: each((place) => place) };
}
