import type { Dot } from '../dot/dot.js';
import type { Layup, Row } from '../layup/layup.js';

export interface DotInPlan {
  readonly dot: Dot;
  /** Board frame, mm. */
  readonly x: number;
  readonly y: number;
}

/** Where dots lie in plan: on their joints. */
export function dotsInPlan(dots: readonly Dot[], { joints }: Pick<Layup, 'joints'>): DotInPlan[] {
  const byId = new Map(joints.map((joint) => [joint.id, joint]));
  return dots.flatMap((dot) => {
    const joint = byId.get(dot.joint);
    return joint ? [{ dot, x: dot.x, y: joint.at + joint.slope * dot.x }] : [];
  });
}

/** The dots on a row's own face, `s` and `z` of the face, mm. */
export function dotsOnFace(dots: readonly Dot[], { face }: Pick<Row, 'face'>): Dot[] {
  return dots.filter(({ joint }) => joint === face.joint);
}
