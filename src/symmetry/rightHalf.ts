import type { Layup } from '../layup/layup.js';

/** What of a glue-up lies on the centreline and to its right: the left is its mirror image. */
export function rightHalf(layup: Layup): Layup {
  return {
    ...layup,
    joints: layup.joints.filter(({ side }) => side !== 'L'),
    rows: layup.rows.filter(({ side }) => side !== 'L'),
  };
}
