import { depthOf } from '../layup/frame.js';
import type { Row } from '../layup/layup.js';
import type { Chamber } from './chamber.js';
import type { Stretch } from './stretch.js';

/** What comes to a far face within this, mm, goes right through. */
const THROUGH = 0.05;

/**
 * How deep behind the row's face its run of members ends, by `s`, mm; undefined where the rail ends it. Straight, as
 * joints are.
 */
export function farSide(row: Row): ((s: number) => number) | undefined {
  const last = row.members[row.members.length - 1]!;
  const joint = row.face.inward[1] > 0 ? last.right : last.left;
  if (!joint) return undefined;
  const { at, slope } = depthOf(row.face, joint);
  return (s) => at + slope * s;
}

/** The least and the greatest depth of the far side over a stretch, mm. */
export function farOver(far: (s: number) => number, { from, to }: Stretch): { least: number; most: number } {
  const ends = [far(from), far(to)];
  return { least: Math.min(...ends), most: Math.max(...ends) };
}

/** Whether a chamber comes out at the row's far face all along. */
export function goesThrough({ profile, depth }: Pick<Chamber, 'profile' | 'depth'>, row: Row): boolean {
  const far = row.end === 'face' ? farSide(row) : undefined;
  return far !== undefined && depth[0] <= THROUGH && profile.every(([s]) => depth[1] >= far(s) - THROUGH);
}
