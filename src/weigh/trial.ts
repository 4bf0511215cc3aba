import type { Board } from '../board/board.js';
import { asRouted } from '../chamber/asRouted.js';
import type { Chamber } from '../chamber/chamber.js';
import { gluing, type Made } from '../dot/gluing.js';
import type { Job } from '../job/job.js';
import type { Layup } from '../layup/layup.js';
import { routed } from '../rout/routing.js';
import type { PatchTrees } from '../wall/patchTree.js';
import type { Bare } from './bare.js';

/** A board with its surface made ready and its glue-up as the job has it; a `Plan` is one. */
export interface Bench {
  readonly board: Board;
  readonly layup: Layup;
  readonly trees: PatchTrees;
  /** What of its weight has nothing to do with its chambers. */
  readonly bare: Bare;
  /** The board as it was glued up, where it is shaped already. */
  readonly drawn?: Made;
}

/** What other chambers on the same board come to: carved and proved as in a plan, dots, guides and all. */
export function tryChambers(
  { board, layup, trees, drawn }: Bench,
  job: Job,
): { layup: Layup; chambers: readonly Chamber[] } {
  const glued = gluing(board, layup, trees, job, undefined, drawn);
  const kept = asRouted(glued.chambers, job.routed ?? [], glued.layup.rows, board, trees);
  const { chambers } = routed(board, glued.layup, trees, kept, glued.glue, job);
  return { layup: glued.layup, chambers: chambers.chambers };
}
