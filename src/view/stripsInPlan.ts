import { inHalfPlane } from '../contour/halfPlane.js';
import type { Point } from '../contour/point.js';
import { placementOf } from '../stock/placementOf.js';
import type { InBlank } from '../stock/inBlank.js';
import { outlineInPlan, sideOf } from './outlineInPlan.js';

/**
 * Each strip of a moulded blank from above, where it stands in the glue-up: closed outlines, board frame, mm. None of a
 * strip that the blank does not reach.
 */
export function stripsInPlan(blank: InBlank): Point[][] {
  const { moulded } = blank;
  const outline = outlineInPlan(moulded, { from: 0, to: moulded.length });
  const whole = [...sideOf(outline, 'right'), ...sideOf(outline, 'left').reverse()];
  return blank.strips.flatMap(({ left, right, moved, member }) => {
    const { along } = placementOf(blank.fits, member.id);
    const here = whole.map(([x, y]): Point => [x - along, y]);
    const behind = right ? inHalfPlane(here, [-right.slope, 1], right.at) : here;
    const cut = left ? inHalfPlane(behind, [left.slope, -1], -left.at) : behind;
    return cut.length > 0 ? [cut.map(([x, y]): Point => [x, y + moved.at + moved.slope * x])] : [];
  });
}
