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
  const rail = moulded.surface.outlines[strip.left ? 1 : 0].outer(x + placementOf(stock!.blank!.fits, id).along);
  return Math.max(0, rail - Math.abs(edge.at + edge.slope * x));
}

/** A member along its joint before it is shaped, board frame: from where to where it reaches, and how high, mm. */
export interface EdgeInGlueUp {
  readonly from: number;
  readonly to: number;
  heightsAt(x: number): { readonly bottom: number; readonly deck: number } | undefined;
}

/** Undefined without stock for it. */
export function edgeInGlueUp({ board, stock }: Plan, { id }: LaidMember, joint: Joint): EdgeInGlueUp | undefined {
  const strip = stock?.blank?.strips.findIndex(({ member }) => member.id === id) ?? -1;
  if (strip >= 0) {
    const line = stockLineAt(stock!.blank!, strip, joint, board.length);
    const xs = line.loops.flatMap((loop) => loop.map(([x]) => x));
    return { from: Math.min(...xs), to: Math.max(...xs), heightsAt: (x) => line.heightsAt(x) };
  }
  const outline = stock?.profiles.find(({ member }) => member.id === id)?.outline;
  if (!outline) return undefined;
  const slant = Math.hypot(1, joint.slope);
  const xs = outline.map(([s]) => s / slant);
  return {
    from: Math.min(...xs),
    to: Math.max(...xs),
    heightsAt: (x) => {
      const span = spanAt(outline, x * slant);
      return span && { bottom: span[0], deck: span[1] };
    },
  };
}

/**
 * The face that two members share as they are milled and sawn, before anything is shaped: how long it is, mm, and how
 * large, mm². Undefined where the stock does not say how far both reach.
 */
export function faceInGlueUp(plan: Plan, joint: Joint): { readonly length: number; readonly area: number } | undefined {
  const edges = plan.layup.members
    .filter(({ left, right }) => left === joint || right === joint)
    .flatMap((member) => edgeInGlueUp(plan, member, joint) ?? []);
  const [from, to] = [Math.max(...edges.map((each) => each.from)), Math.min(...edges.map((each) => each.to))];
  if (edges.length < 2 || to <= from) return undefined;
  const step = (Math.hypot(1, joint.slope) * (to - from)) / STEPS;
  let area = 0;
  for (let i = 0; i < STEPS; i++) {
    const heights = edges.flatMap((edge) => edge.heightsAt(from + ((i + 0.5) / STEPS) * (to - from)) ?? []);
    if (heights.length < 2) continue;
    const [low, high] = [
      Math.max(...heights.map((each) => each.bottom)),
      Math.min(...heights.map((each) => each.deck)),
    ];
    area += step * Math.max(0, high - low);
  }
  return { length: step * STEPS, area };
}

/** A face is looked at in so many places along it. */
const STEPS = 200;
