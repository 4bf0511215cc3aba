import type { Dot } from '../dot/dot.js';
import type { Joint } from '../layup/layup.js';

/** A dot seen from the deck: on its joint. Board frame, mm. */
export interface DotInPlan {
  readonly dot: Dot;
  readonly x: number;
  readonly y: number;
}

export function dotsInPlan(dots: readonly Dot[], joints: readonly Joint[]): DotInPlan[] {
  const jointOf = new Map(joints.map((joint) => [joint.id, joint]));
  return dots.map((dot) => {
    const { at, slope } = jointOf.get(dot.joint)!;
    return { dot, x: dot.x, y: at + slope * dot.x };
  });
}
