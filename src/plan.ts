import { blocksOf } from './block/blocks.js';
import type { Block } from './block/block.js';
import { boardOf, type Board } from './board/board.js';
import { chambersIn, type Chambers } from './chamber/chambers.js';
import type { Job } from './job/job.js';
import { layupOf, type Layup } from './layup/layup.js';
import { patchTreesOf } from './wall/patchTree.js';
import { weightsOf, type Weights } from './weigh/weights.js';

/** Everything that is computed from a job, and nothing that is printed or shown. Immutable. */
export interface Plan extends Chambers {
  readonly job: Job;
  readonly board: Board;
  readonly layup: Layup;
  readonly blocks: readonly Block[];
  readonly weights: Weights;
}

/** The whole computation: a pure function, the same in Node and in the browser. */
export function planOf(job: Job): Plan {
  const board = boardOf(job.board);
  const layup = layupOf(job.glueUp, board.length);
  const trees = patchTreesOf(board.mesh);
  const chambers = chambersIn(board, layup, trees, job);
  const blocks = blocksOf(chambers.chambers, job.fill);
  const weights = weightsOf(board, layup, chambers.chambers, blocks, job);
  return { job, board, layup, ...chambers, blocks, weights };
}
