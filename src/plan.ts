import type { Block } from './block/block.js';
import { blocksOf } from './block/blocks.js';
import { boardOf, type Board } from './board/board.js';
import { asRouted } from './chamber/asRouted.js';
import { carvingIn, drawnPlaces, gathered, type Chambers } from './chamber/chambers.js';
import { correctionsFrom, unknownChambers } from './chamber/measured.js';
import { measuredInDoubt } from './chamber/measuredInDoubt.js';
import { carvedAround } from './dot/carvedAround.js';
import type { Glue } from './dot/dot.js';
import { glueOf } from './dot/glueOf.js';
import { placedGlue } from './dot/placedGlue.js';
import { restaggered } from './dot/stagger.js';
import type { Doubt } from './job/finding.js';
import type { Job } from './job/job.js';
import type { RawStockSpec } from './job/spec/stock.js';
import type { Layup } from './layup/layup.js';
import { layupOf } from './layup/layupOf.js';
import type { Routing } from './rout/rout.js';
import { routed } from './rout/routing.js';
import { stockInDoubt } from './stock/inDoubt.js';
import { stockOf, type Stock } from './stock/stockOf.js';
import { isAlike } from './symmetry/alike.js';
import type { Arrangement } from './symmetry/arrangement.js';
import { mirrored } from './symmetry/mirrored.js';
import { rightHalf } from './symmetry/rightHalf.js';
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
  /** From the raw stock to the glued blank, where the job lists stock. */
  readonly stock?: Stock;
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
  const laid = layupOf(job.glueUp, board.length);
  const isMirrored = !drawn && isAlike(laid, job);
  const rows = drawn ? staggeredAs(drawn) : restaggered(board, isMirrored ? rightHalf(laid) : laid, trees, job);
  const carving = carvingIn(board, rows.layup, trees, job, same?.chambers);
  const places = drawnPlaces(carving);
  const placed = placedGlue(places, board, rows.layup, trees, job, same, drawn);
  const around = carvedAround(places, carving, placed.keeps, job.dots.clearance);
  const found = glueOf(around, placed, job.dots.clearance);
  const half: Arrangement = {
    layup: rows.layup,
    chambers: gathered(around.rows, carving, [...rows.notes, ...found.notes]),
    glue: found.glue,
  };
  const { layup, chambers: carved, glue } = isMirrored ? mirrored(half, laid, job) : half;
  const kept = asRouted(carved, job.routed ?? [], layup.rows, board, trees);
  const { chambers, routing } = routed(board, layup, trees, kept, glue, job);
  const bare = same && isEqual(same.job.glueUp, job.glueUp) ? same.bare : bareOf(board, layup);
  // What is sawn and glued up is the board as drawn; once it is shaped, its stock is no question any more.
  const stock = drawn?.stock ?? (job.stock && stockFor(job, job.stock, board, layup, same));
  const short = stock && !drawn?.stock ? stockInDoubt(stock, job.stock!, job.units) : [];
  const doubts = [...(job.doubts ?? []), ...short, ...(drawn ? measuredInDoubt(job.shaped!, drawn, job.units) : [])];
  const notes = [...chambers.notes, ...(drawn ? unknownChambers(job.shaped!, drawn) : [])];
  const empty = { job, board, layup, trees, bare, ...chambers, notes, glue, routing, doubts };
  return filled({ ...empty, ...(stock && { stock }), ...(drawn && { drawn }) }, job);
}

/** A plan with its chambers filled, and glassed, as a job says that differs in nothing that touches a chamber. */
export function filled(plan: Omit<Plan, 'blocks' | 'weights'>, job: Job): Plan {
  const { bare, layup, chambers, routing } = plan;
  const fit = { ...job.blocks, cutterRadius: job.chambers.cutterDiameter / 2 };
  const blocks = blocksOf(chambers, job.fill, fit, routing.settings, layup.rows);
  return { ...plan, job, blocks, weights: weightsOf(bare, layup, chambers, blocks, job) };
}

function stockFor(job: Job, spec: RawStockSpec, board: Board, layup: Layup, same: Plan | undefined): Stock {
  const known = same?.stock && isEqual([same.job.stock, same.job.glueUp], [spec, job.glueUp]) ? same.stock : undefined;
  return known ?? stockOf(spec, board, layup, (job.board.left ?? job.glueUp.left) !== undefined);
}

/** A blank that is glued up already keeps its rows as they were shifted then. */
function staggeredAs({ layup, notes }: Plan): Pick<Plan, 'layup' | 'notes'> {
  return { layup, notes: notes.filter(({ kind }) => kind === 'shifted') };
}

function isSameSurface(a: Job, b: Job): boolean {
  // A measured wall corrects the surface by where the drawn chamber stands.
  if (b.shaped?.some(({ kind }) => kind === 'wall')) return false;
  return isEqual([a.board, a.shaped ?? []], [b.board, b.shaped ?? []]);
}

function isEqual(a: unknown, b: unknown): boolean {
  return JSON.stringify(a) === JSON.stringify(b);
}
