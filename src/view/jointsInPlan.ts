import { without, type Stretch } from '../chamber/stretch.js';
import type { Point } from '../contour/point.js';
import type { Joint } from '../layup/layup.js';
import type { OutlineInPlan } from './outlineInPlan.js';

/**
 * A joint along the edge of a chamber is the chamber's own line; one that runs deeper in than this is routed away, mm.
 */
const EDGE = 0.5;

/** A joint as it is left standing within the board, seen from the deck, board frame, mm. */
export interface JointInPlan {
  readonly joint: Joint;
  readonly from: Point;
  readonly to: Point;
}

/**
 * The joints within the outline, broken where something takes their place.
 *
 * @param taken closed convex outlines in which no joint is drawn
 */
export function jointsInPlan(
  outline: OutlineInPlan,
  joints: readonly Joint[],
  taken: readonly (readonly Point[])[] = [],
): JointInPlan[] {
  return joints.flatMap((joint): JointInPlan[] => {
    const whole = withinBoard(outline, joint);
    if (!whole) return [];
    const y = (x: number) => joint.at + joint.slope * x;
    const gaps = taken.flatMap((each) => within(each, joint) ?? []);
    return without(whole, gaps).map(({ from, to }) => ({ joint, from: [from, y(from)], to: [to, y(to)] }));
  });
}

/** From where to where a joint lies within the board: to where it crosses the outline. */
function withinBoard({ stations }: OutlineInPlan, { at, slope }: Joint): Stretch | undefined {
  // How far the joint lies within the rail, and beyond a notch's side.
  const room = stations.map(({ x, outer, inner }) => {
    const y = at + slope * x;
    const side = y < 0 ? 0 : 1;
    return [outer[side] - Math.abs(y), Math.abs(y) - inner[side]];
  });
  const isInside = room.map((each) => each.every((mm) => mm >= 0));
  const [first, last] = [isInside.indexOf(true), isInside.lastIndexOf(true)];
  if (first < 0) return undefined;
  const end = (i: number, beyond: number): number => {
    const next = room[beyond];
    if (!next) return stations[i]!.x;
    const shares = next.map((mm, k) => (mm < 0 ? room[i]![k]! / (room[i]![k]! - mm) : 1));
    return stations[i]!.x + Math.min(...shares) * (stations[beyond]!.x - stations[i]!.x);
  };
  const [from, to] = [end(first, first - 1), end(last, last + 1)];
  return from < to ? { from, to } : undefined;
}

/** From where to where a joint runs inside a closed outline, deeper than its edge; undefined where it passes it by. */
function within(outline: readonly Point[], { at, slope }: Joint): Stretch | undefined {
  const over = outline.map(([x, y]) => y - at - slope * x);
  if (Math.min(...over) > -EDGE || Math.max(...over) < EDGE) return undefined;
  const crossings = outline.flatMap(([x], i): number[] => {
    const j = (i + 1) % outline.length;
    if (over[i]! > 0 === over[j]! > 0) return [];
    return [x + (over[i]! / (over[i]! - over[j]!)) * (outline[j]![0] - x)];
  });
  return crossings.length < 2 ? undefined : { from: Math.min(...crossings), to: Math.max(...crossings) };
}
