import { PATCHES, type Patch } from '../board/mesh.js';
import type { PatchTrees } from './patchTree.js';
import type { Solid } from './solid.js';
import { thinnest, type Thinnest } from './thinnest.js';

/** The proven walls of one chamber: what is certainly there toward each patch, mm, and where it is thinnest. */
export interface Walls {
  readonly thickness: Readonly<Record<Patch, number>>;
  readonly places: Readonly<Record<Patch, Thinnest>>;
}

/**
 * Proves the walls of a chamber against the finished surface. The mesh may lie outside the smooth surface by `chordError`, so every wall is
 * given thinner by that much: a true lower bound.
 */
export function wallsOf(solid: Solid, trees: PatchTrees, chordError: number): Walls {
  const entries = PATCHES.map((patch) => [patch, thinnest(solid, [trees[patch]])] as const);
  const each = <T>(pick: (place: Thinnest) => T) =>
    Object.fromEntries(entries.map(([patch, place]) => [patch, pick(place)])) as Record<Patch, T>;
  return { thickness: each((place) => place.distance - chordError), places: each((place) => place) };
}
