import { momentsOf } from '../../contour/area.js';
import { spreadAlong } from '../../contour/spread.js';
import { pointMoments, type Moments } from '../../weigh/moments.js';
import type { Profile } from './profile.js';

/** What a member holds as it is milled to its profile, litres, where it stands in the glue-up. */
export function milledVolume({ member: { left, right }, outline, thickness }: Profile): Moments {
  const { area, x: s } = momentsOf(outline.map(([x, y]) => ({ x, y })));
  const face = left ?? right;
  const slant = Math.hypot(1, face?.slope ?? 0);
  const at = (joint: typeof face) => (joint ? joint.at + (joint.slope * s) / slant : undefined);
  // A member that runs to the rail is told by the joint it has.
  const [from, to] = [at(left) ?? at(right)! - thickness, at(right) ?? at(left)! + thickness];
  const { amount, x, xx, yy } = pointMoments((area * thickness) / 1e6, s / slant, (from + to) / 2);
  return { amount, x, xx: xx + amount * spreadAlong(outline), yy: yy + (amount * thickness ** 2) / 12 };
}
