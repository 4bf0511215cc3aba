import type { Point } from '../contour/point.js';
import { areaOf } from '../contour/area.js';
import { rectangleAround } from '../contour/rectangle.js';
import { turned } from '../contour/turned.js';
import { easeCorners } from '../contour/ease.js';
import type { Board } from '../board/board.js';
import { PATCHES, type Patch } from '../board/mesh.js';
import type { Chamber } from '../chamber/chamber.js';
import { heightsAt } from '../chamber/heights.js';
import { toBoard } from '../layup/frame.js';
import type { Face } from '../layup/layup.js';
import type { PatchTrees } from '../wall/patchTree.js';
import { solidOf } from '../wall/solid.js';
import { onSurface, wallsOf } from '../wall/walls.js';
import type { AssignedSize } from './family.js';
import { longestRun, settingSlack } from './inscribed.js';
import type { GuideSetting } from './rout.js';

/** A chamber as its shared guide cuts it, and where that guide is set. */
export interface SharedCut {
  readonly chamber: Chamber;
  readonly setting: Omit<GuideSetting, 'guide'>;
}

/**
 * The chamber cut to its shared size, in the middle of the room it has for it, on whole steps of the rule it is set
 * with. The cut lies within the chamber as it was proved, so the old walls still hold; it is proved anew, and of two
 * true lower bounds the larger is reported.
 */
export function sharedCutOf(
  { chamber, level, size }: AssignedSize,
  face: Face,
  cutterDiameter: number,
  { grid, mesh }: Pick<Board, 'grid' | 'mesh'>,
  trees: PatchTrees,
  step: number,
): SharedCut | undefined {
  const run = size && longestRun(level, size.height + 2 * settingSlack(level, step).v);
  if (!run) return undefined;
  const middle = turned([(run.from + run.to) / 2, (run.low + run.high) / 2], level.tilt, level.centre);
  const onStep = (mm: number) => Math.round(mm / step) * step;
  const s = onStep(middle[0]);
  const bottom = heightsAt(grid, ...onFace(face, s))?.bottom;
  if (bottom === undefined) return undefined;
  const overBottom = onStep(middle[1] + (s - middle[0]) * Math.tan(level.tilt) - bottom);
  const z = bottom + overBottom;
  const corners = rectangleAround([0, 0], size.length, size.height).map((at) => turned(at, level.tilt, [s, z]));
  const eased = easeCorners(corners, cutterDiameter / 2);
  if (!eased) return undefined;
  const walls = wallsOf(solidOf(face, eased.profile, chamber.depth), trees, mesh.chordError, chamber.at);
  const each = <T>(pick: (patch: Patch) => T) =>
    Object.fromEntries(PATCHES.map((patch) => [patch, pick(patch)])) as Record<Patch, T>;
  return {
    chamber: {
      ...chamber,
      ...eased,
      wall: each((patch) => Math.max(walls.thickness[patch], chamber.wall[patch])),
      at: onSurface(walls),
      volume: chamber.volume * (areaOf(eased.contour) / areaOf(chamber.contour)),
    },
    setting: { chamber: chamber.id, s, z, overBottom, tiltInDegrees: (level.tilt * 180) / Math.PI },
  };
}

/** A place along a face in plan, board frame. */
function onFace(face: Face, s: number): Point {
  const [x, y] = toBoard(face, s, 0, 0);
  return [x, y];
}
