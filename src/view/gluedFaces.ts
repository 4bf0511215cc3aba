import type { Joint } from '../layup/layup.js';
import type { Plan } from '../plan.js';
import { slicesOf } from '../weigh/slices.js';

/** A joint within the finished board: from where to where along the board, mm, and its face there, mm². */
export interface GluedFace {
  readonly joint: Joint;
  readonly from: number;
  readonly to: number;
  readonly area: number;
}

/** Every joint, left to right. */
export function gluedFaces({ board, layup }: Pick<Plan, 'board' | 'layup'>): GluedFace[] {
  const { xs, joints, jointHeight } = slicesOf(board, layup);
  return layup.joints.map((joint, j) => {
    const slant = Math.hypot(1, joint.slope);
    const height = (row: number) => jointHeight[row * joints + j]!;
    const rows = Array.from(xs.keys()).filter((row) => height(row) > 0);
    let area = 0;
    for (let row = 1; row < xs.length; row++)
      area += (slant * (xs[row]! - xs[row - 1]!) * (height(row) + height(row - 1))) / 2;
    return { joint, from: xs[rows[0] ?? 0]!, to: xs[rows.at(-1) ?? 0]!, area };
  });
}
