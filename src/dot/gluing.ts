import type { GluingJob } from './gluingJob.js';
import type { Board } from '../board/board.js';
import type { Layup } from '../layup/layup.js';
import type { PatchTrees } from '../wall/patchTree.js';
import { isAlike } from './alike.js';
import { glued, type Before, type Gluing, type Made } from './glued.js';
import { mirrored } from './mirrored.js';

export type { Gluing, GluingJob, Made };

/**
 * Places the dots and carves the chambers around them. Where both sides of a board are alike, the right one is done and
 * the left is its mirror image, so that left and right share their sheets, guides and blocks to the last hair. A blank
 * that is glued up already is taken as it was `made`.
 */
export function gluing(
  board: Board,
  layup: Layup,
  trees: PatchTrees,
  job: GluingJob,
  before?: Before,
  made?: Made,
): Gluing {
  if (made || !isAlike(layup, job)) return glued(board, layup, trees, job, before, made);
  const half: Layup = {
    ...layup,
    joints: layup.joints.filter(({ side }) => side !== 'L'),
    rows: layup.rows.filter(({ side }) => side !== 'L'),
  };
  return mirrored(glued(board, half, trees, job, before), layup, job);
}
