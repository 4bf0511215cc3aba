import { spanAt } from '../contour/span.js';
import type { Joint, LaidMember } from '../layup/layup.js';
import type { Plan } from '../plan.js';
import { placementOf } from '../stock/placementOf.js';
import { stockLineAt } from './stockLine.js';

/**
 * How wide a member is as it is glued up, `x` from the nose tip, mm: between its joints; at the rail what the moulded
 * blank leaves it. Undefined where nothing says how far it reaches.
 */
export function widthInGlueUp({ board, stock }: Plan, { id, left, right }: LaidMember, x: number): number | undefined {
  const at = ({ at, slope }: Joint) => at + slope * x;
  if (left && right) return at(right) - at(left);
  const strip = stock?.blank?.strips.find(({ member }) => member.id === id);
  const edge = strip?.left ?? strip?.right;
  if (!strip || !edge || x > board.length) return undefined;
  const { moulded } = stock!.blank!;
  const rail = moulded.surface.outlines[strip.left ? 1 : 0].outer(x + placementOf(stock!.blank!, id).along);
  return Math.max(0, rail - Math.abs(edge.at + edge.slope * x));
}

/** How high a member reaches at its joint before it is shaped, board frame, mm; undefined without stock for it. */
export function edgeInGlueUp(
  { board, stock }: Plan,
  { id }: LaidMember,
  joint: Joint,
): (x: number) => { readonly bottom: number; readonly deck: number } | undefined {
  const strip = stock?.blank?.strips.findIndex(({ member }) => member.id === id) ?? -1;
  if (strip >= 0) return stockLineAt(stock!.blank!, strip, joint, board.length).heightsAt;
  const profile = stock?.profiles.find(({ member }) => member.id === id);
  return (x) => {
    const span = profile && spanAt(profile.outline, x * Math.hypot(1, joint.slope));
    return span && { bottom: span[0], deck: span[1] };
  };
}
