import { layupOf } from './layup/layupOf.js';
import { blocksOf } from './block/blocks.js';
import type { Block } from './block/block.js';
import { boardOf, type Board } from './board/board.js';
import { asRouted } from './chamber/asRouted.js';
import type { Chambers } from './chamber/chambers.js';
import { correctionsFrom, unknownChambers } from './chamber/measured.js';
import { measuredInDoubt } from './chamber/measuredInDoubt.js';
import type { Glue } from './dot/dot.js';
import { gluing } from './dot/gluing.js';
import type { Doubt } from './job/finding.js';
import type { Job } from './job/job.js';
import { type Layup } from './layup/layup.js';
import type { Routing } from './rout/rout.js';
import { routed } from './rout/routing.js';
import { patchTreesOf, type PatchTrees } from './wall/patchTree.js';
import { bareOf, type Bare } from './weigh/bare.js';
import { weightsOf, type Weights } from './weigh/weights.js';

/** Everything that is computed from a job, and nothing that is printed or shown. Immutable. */
export interface Plan extends Chambers {
  readonly job: Job;
  readonly board: Board;
  readonly layup: Layup;
  /** The surface's triangles as the proof asks for them. */
  readonly trees: PatchTrees;
  /** What of its weight has nothing to do with its chambers. */
  readonly bare: Bare;
  /** Dots on the dotted joints, and smears. */
  readonly glue: Glue;
  readonly routing: Routing;
  readonly blocks: readonly Block[];
  readonly weights: Weights;
  /** What can be, but hardly is: of the job, and of what was measured after shaping. Told in every output. */
  readonly doubts: readonly Doubt[];
  /** The plan as drawn, where the board was measured after shaping. */
  readonly drawn?: Plan;
}

/**
 * The whole computation: a pure function, the same in Node and in the browser. A plan made before may be given: where
 * its surface is the same, it is taken over instead of made again, and what hangs on the surface and the glue-up alone
 * with it, which changes nothing but the time it takes.
 *
 * Where something was measured after shaping, the board is planned as drawn first; what was measured then corrects its
 * surface. The blank was glued up by that first plan, so its dots stay.
 */
export function planOf(job: Job, before?: Plan): Plan {
  const drawn = job.shaped?.length ? planOf({ ...job, shaped: [] }, before?.drawn ?? before) : undefined;
  const same = before && isSameSurface(before.job, job) ? before : undefined;
  const board = same?.board ?? boardOf(job.board, drawn && correctionsFrom(job.shaped!, drawn));
  const trees = same?.trees ?? patchTreesOf(board.mesh);
  const { layup, chambers: carved, glue } = gluing(board, layupOf(job.glueUp, board.length), trees, job, same, drawn);
  const kept = asRouted(carved, job.routed ?? [], layup.rows, board, trees);
  const { chambers, routing } = routed(board, layup, trees, kept, glue, job);
  const fit = { ...job.blocks, cutterRadius: job.chambers.cutterDiameter / 2 };
  const blocks = blocksOf(chambers.chambers, job.fill, fit, routing.settings, layup.rows);
  const bare = same && isEqual(same.job.glueUp, job.glueUp) ? same.bare : bareOf(board, layup);
  const weights = weightsOf(bare, layup, chambers.chambers, blocks, job);
  const doubts = [...(job.doubts ?? []), ...(drawn ? measuredInDoubt(job.shaped!, drawn, job.units) : [])];
  const notes = [...chambers.notes, ...(drawn ? unknownChambers(job.shaped!, drawn) : [])];
  return {
    job,
    board,
    layup,
    trees,
    bare,
    ...chambers,
    notes,
    glue,
    routing,
    blocks,
    weights,
    doubts,
    ...(drawn && { drawn }),
  };
}

function isSameSurface(a: Job, b: Job): boolean {
  // A measured wall corrects the surface by where the drawn chamber stands.
  if (b.shaped?.some(({ kind }) => kind === 'wall')) return false;
  return isEqual([a.board, a.shaped ?? []], [b.board, b.shaped ?? []]);
}

function isEqual(a: unknown, b: unknown): boolean {
  return JSON.stringify(a) === JSON.stringify(b);
}
