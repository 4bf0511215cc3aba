import type { Chamber } from '../chamber/chamber.js';
import type { Point } from '../contour/point.js';
import { spanAt } from '../contour/span.js';
import type { Face } from '../layup/layup.js';

/**
 * The outline of a chamber in the plane across the board at `x`, `[y, z]`, mm, counter-clockwise; undefined where the
 * plane passes it by. A flared face is cut askew: on its way through the depth the plane runs along the profile, whose
 * every corner between is a corner of the outline.
 */
export function chamberAcross(
  { profile, depth }: Pick<Chamber, 'profile' | 'depth'>,
  { origin, along, inward }: Pick<Face, 'origin' | 'along' | 'inward'>,
  x: number,
): Point[] | undefined {
  const [near, far] = depth.map((t) => ({ t, s: (x - origin[0] - t * inward[0]) / along[0] }));
  const [least, most] = [Math.min(near!.s, far!.s), Math.max(near!.s, far!.s)];
  const between = new Set(profile.map(([s]) => s).filter((s) => s > least && s < most));
  const cuts = [near!, far!, ...[...between].map((s) => ({ s, t: (x - origin[0] - s * along[0]) / inward[0] }))];
  const low: Point[] = [];
  const high: Point[] = [];
  for (const { s, t } of cuts.sort((a, b) => a.t - b.t)) {
    const span = spanAt(profile, s);
    if (!span) continue;
    const y = origin[1] + s * along[1] + t * inward[1];
    low.push([y, span[0]]);
    high.push([y, span[1]]);
  }
  if (low.length < 2) return undefined;
  const around = [...low, ...high.reverse()];
  return inward[1] > 0 ? around : around.reverse();
}
