import type { Shown } from '../plan/answer.js';

export interface DotInPlan {
  readonly dot: Shown['result']['dots'][number];
  /** Board frame, mm. */
  readonly x: number;
  readonly y: number;
}

/** Where the dots lie in plan: on their joints. */
export function dotsInPlan({ result, layup }: Shown): DotInPlan[] {
  const joints = new Map(layup.joints.map((joint) => [joint.id, joint]));
  return result.dots.flatMap((dot) => {
    const joint = joints.get(dot.joint);
    return joint ? [{ dot, x: dot.x, y: joint.at + joint.slope * dot.x }] : [];
  });
}

/** The dots on a row's own face, `s` and `z` of the face, mm. */
export function dotsOnFace({ result }: Shown, row: Shown['layup']['rows'][number]) {
  return result.dots.filter(({ joint }) => joint === row.face.joint);
}
