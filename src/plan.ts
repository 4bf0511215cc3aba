import { blocksOf } from './block/blocks.js';
import type { Block } from './block/block.js';
import { boardOf, type Board } from './board/board.js';
import type { Chambers } from './chamber/chambers.js';
import type { Glue } from './dot/dot.js';
import { gluing } from './dot/gluing.js';
import type { Job } from './job/job.js';
import { layupOf, type Layup } from './layup/layup.js';
import type { Routing } from './rout/rout.js';
import { routed } from './rout/routing.js';
import { patchTreesOf, type PatchTrees } from './wall/patchTree.js';
import { weightsOf, type Weights } from './weigh/weights.js';

/** Everything that is computed from a job, and nothing that is printed or shown. Immutable. */
export interface Plan extends Chambers {
  readonly job: Job;
  readonly board: Board;
  readonly layup: Layup;
  /** The surface's triangles as the proof asks for them. */
  readonly trees: PatchTrees;
  /** Dots on the dotted joints, and smears. */
  readonly glue: Glue;
  readonly routing: Routing;
  readonly blocks: readonly Block[];
  readonly weights: Weights;
}

/**
 * The whole computation: a pure function, the same in Node and in the browser. A plan made before may be given: where its board is the same,
 * the surface is taken over instead of made again, which changes nothing but the time it takes.
 */
export function planOf(job: Job, before?: Plan): Plan {
  const same = before && JSON.stringify(before.job.board) === JSON.stringify(job.board) ? before : undefined;
  const board = same?.board ?? boardOf(job.board);
  const trees = same?.trees ?? patchTreesOf(board.mesh);
  const { layup, chambers: carved, glue } = gluing(board, layupOf(job.glueUp, board.length), trees, job);
  const { chambers, routing } = routed(board, layup, trees, carved, job);
  const blocks = blocksOf(chambers.chambers, job.fill);
  const weights = weightsOf(board, layup, chambers.chambers, blocks, job);
  return { job, board, layup, trees, ...chambers, glue, routing, blocks, weights };
}
