import { PATCHES, type Mesh, type Patch } from '../board/mesh.js';
import type { Chamber } from '../chamber/chamber.js';
import { areaOf, easeCorners } from '../chamber/contour.js';
import type { Face } from '../layup/layup.js';
import type { PatchTrees } from '../wall/patchTree.js';
import { solidOf } from '../wall/solid.js';
import { onSurface, wallsOf } from '../wall/walls.js';
import type { Cut } from './family.js';
import { longestRun } from './inscribed.js';
import type { GuideSetting } from './rout.js';

type Pair = readonly [number, number];

/** A chamber as its shared guide cuts it, and where that guide is set. */
export interface SharedCut {
  readonly chamber: Chamber;
  readonly setting: Omit<GuideSetting, 'guide'>;
}

/**
 * The chamber cut to its shared size, in the middle of the room it has for it. The cut lies within the chamber as it was proven, so the old walls
 * still hold; it is proven anew, and of two true lower bounds the larger is reported.
 */
export function sharedCutOf(
  { chamber, level, size }: Cut,
  face: Face,
  cutterDiameter: number,
  mesh: Mesh,
  trees: PatchTrees,
): SharedCut | undefined {
  const run = size && longestRun(level, size.height);
  if (!run) return undefined;
  const u = (run.from + run.to) / 2;
  const v = (run.low + run.high) / 2;
  const [cos, sin] = [Math.cos(level.tilt), Math.sin(level.tilt)];
  const turned = (a: number, b: number): Pair => [
    level.centre[0] + a * cos - b * sin,
    level.centre[1] + a * sin + b * cos,
  ];
  const [l, h] = [size.length / 2, size.height / 2];
  const corners = [turned(u - l, v - h), turned(u + l, v - h), turned(u + l, v + h), turned(u - l, v + h)];
  const eased = easeCorners(corners, cutterDiameter / 2);
  if (!eased) return undefined;
  const walls = wallsOf(solidOf(face, eased.profile, chamber.depth), trees, mesh.chordError, chamber.at);
  const each = <T>(pick: (patch: Patch) => T) =>
    Object.fromEntries(PATCHES.map((patch) => [patch, pick(patch)])) as Record<Patch, T>;
  const [s, z] = turned(u, v);
  return {
    chamber: {
      ...chamber,
      ...eased,
      wall: each((patch) => Math.max(walls.thickness[patch], chamber.wall[patch])),
      at: onSurface(walls),
      volume: chamber.volume * (areaOf(eased.contour) / areaOf(chamber.contour)),
    },
    setting: { chamber: chamber.id, s, z, tiltInDegrees: (level.tilt * 180) / Math.PI },
  };
}
