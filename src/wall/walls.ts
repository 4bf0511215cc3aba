import { PATCHES, type Patch } from '../board/mesh.js';
import type { PatchTrees } from './patchTree.js';
import type { Solid } from './solid.js';
import { thinnest, type Point, type Thinnest } from './thinnest.js';

/** The proven walls of one chamber: what is certainly there toward each patch, mm, and where it is thinnest. */
export interface Walls {
  readonly thickness: Readonly<Record<Patch, number>>;
  readonly places: Readonly<Record<Patch, Thinnest>>;
}

/** A point toward each patch. */
export type Hints = Readonly<Record<Patch, Point>>;

/** Where on the surface each wall is thinnest. */
export function onSurface({ places: { deck, bottom, rail } }: Walls): Hints {
  return { deck: deck.onSurface, bottom: bottom.onSurface, rail: rail.onSurface };
}

/**
 * Proves the walls of a chamber against the finished surface. The mesh may lie outside the smooth surface by `chordError`, so every wall is
 * given thinner by that much: a true lower bound.
 *
 * @param hints points of the surface that are thought to be near the thinnest places, as `thinnest` takes them
 */
export function wallsOf(solid: Solid, trees: PatchTrees, chordError: number, hints?: Hints): Walls {
  const entries = PATCHES.map((patch) => [patch, thinnest(solid, [trees[patch]], hints?.[patch])] as const);
  const each = <T>(pick: (place: Thinnest) => T) =>
    Object.fromEntries(entries.map(([patch, place]) => [patch, pick(place)])) as Record<Patch, T>;
  return { thickness: each((place) => place.distance - chordError), places: each((place) => place) };
}
