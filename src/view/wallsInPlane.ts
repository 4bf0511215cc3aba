import type { Patch } from '../board/mesh.js';
import type { Point } from '../contour/point.js';
import { nearestGap, type Gap } from './gap.js';
import type { Section, SurfaceLoop } from './section.js';

/**
 * The walls around an outline in the plane of a cross-section, mm, toward each of some patches; absent where the cut
 * has none of that patch. The wall in space, which the plan proves, may be thinner.
 */
export function wallsInPlane(
  loops: Section['loops'],
  corners: readonly Point[],
  patches: readonly Patch[],
): Partial<Record<Patch, Gap>> {
  return Object.fromEntries(
    patches.flatMap((patch) => {
      const gap = nearestGap(
        corners,
        loops.flatMap((loop) => stretchesOf(loop, patch)),
      );
      return gap ? [[patch, gap]] : [];
    }),
  );
}

function stretchesOf({ points, patches }: SurfaceLoop, patch: Patch): [Point, Point][] {
  return points.flatMap((point, i): [Point, Point][] =>
    patches[i] === patch ? [[point, points[(i + 1) % points.length]!]] : [],
  );
}
