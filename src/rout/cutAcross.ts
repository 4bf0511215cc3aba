import type { Chamber } from '../chamber/chamber.js';
import { rowsAt } from '../chamber/onRow.js';
import { lineOnRow } from '../dot/around.js';
import type { Glue } from '../dot/dot.js';
import { gapTo } from '../dot/spot.js';
import type { Layup } from '../layup/layup.js';

/**
 * Names of the glue that a chamber takes away whole, and that would be cut across, or left standing, if only this
 * smaller profile were routed.
 *
 * @param smaller within the chamber, face frame of its row, mm
 * @param clearance from the edge of the glue to the chamber's, mm
 */
export function cutAcross(
  { id, row }: Chamber,
  smaller: Chamber['profile'],
  { dots, smears }: Glue,
  layup: Layup,
  clearance: number,
): string[] {
  const spots = [
    ...dots.map(({ s, z, diameter, ...dot }) => ({ ...dot, from: [s, z], to: [s, z], width: diameter }) as const),
    ...smears,
  ];
  return spots.flatMap(({ id: name, joint, from, to, width, sides }) => {
    if (!sides.some(({ way, chambers }) => way === 'swallowed' && chambers.includes(id))) return [];
    const at = rowsAt(layup, joint).find((each) => each.row.id === row);
    if (!at) return [];
    const { gap, inside } = gapTo(smaller, lineOnRow({ from, to }, at));
    return inside && gap >= width / 2 + clearance ? [] : [name];
  });
}
