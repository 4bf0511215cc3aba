import type { BoardSpec } from './job/spec/board.js';
import type { Block } from './block/block.js';
import { blocksOf } from './block/blocks.js';
import { boardOf, type Board } from './board/board.js';
import type { Note } from './chamber/chamber.js';
import { asRouted } from './chamber/asRouted.js';
import { carvingIn, carvingJobOf, drawnPlaces, gathered, type Carving, type Chambers } from './chamber/chambers.js';
import { measuredBoard, unknownChambers, walledBy } from './chamber/measured.js';
import { measuredInDoubt } from './chamber/measuredInDoubt.js';
import { carvedAround, type CarvedAround } from './dot/carvedAround.js';
import type { Glue } from './dot/dot.js';
import { glueOf } from './dot/glueOf.js';
import { placedGlue } from './dot/placedGlue.js';
import { restaggered } from './dot/stagger.js';
import { gluingJobOf } from './dot/gluingJob.js';
import { hintsOf } from './dot/hintsOf.js';
import { finsOf, type BuiltFin } from './fin/finOf.js';
import { finsInDoubt } from './fin/inDoubt.js';
import type { Doubt } from './job/finding.js';
import type { Job } from './job/job.js';
import { unchangedAs } from './job/unchanged.js';
import { NO_HINTS } from './kept/hints.js';
import { Past } from './kept/past.js';
import type { Layup } from './layup/layup.js';
import { gluingInDoubt } from './layup/gluingInDoubt.js';
import { layupOf } from './layup/layupOf.js';
import type { Routing } from './rout/rout.js';
import { routed, routedJobOf } from './rout/routing.js';
import { stockInDoubt } from './stock/inDoubt.js';
import { stockOf, type Stock } from './stock/stockOf.js';
import { isAlike } from './symmetry/alike.js';
import type { Arrangement } from './symmetry/arrangement.js';
import { mirrored } from './symmetry/mirrored.js';
import { rightHalf } from './symmetry/rightHalf.js';
import { patchTreesOf, type PatchTrees } from './wall/patchTree.js';
import { bareOf, fromStock, type Bare } from './weigh/bare.js';
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
  /** The fins that the builder makes. */
  readonly fins: readonly BuiltFin[];
  /** What its steps have made, for a plan that is made over it. */
  readonly past: Past;
  /** The plan as drawn, where the board was measured after shaping. */
  readonly drawn?: Plan;
}

/**
 * The whole computation: a pure function, the same in Node and in the browser. A plan made before may be given: what a
 * line made of the very same inputs then is taken over instead of made again, which changes nothing but the time it
 * takes.
 *
 * Where something was measured after shaping, the board is planned as drawn first; what was measured then corrects its
 * surface. The blank was glued up by that first plan, so its dots stay.
 */
export function planOf(said: Job, before?: Plan): Plan {
  const job = before ? unchangedAs(before.job, said) : said;
  const drawn = job.shaped?.length ? planOf(asDrawn(job), before?.drawn ?? before) : undefined;
  const past = new Past(before?.past, before && isSameSurface(before.job, job) ? hintsOf(before) : NO_HINTS);
  const board = drawn
    ? past.of(measuredBoard, job.board, job.shaped!, drawn.board, walledBy(job.shaped!, drawn.chambers))
    : past.of(drawnBoard, job.board);
  const trees = past.of(patchTreesOf, board.proved);
  const laid = past.of(layupOf, job.glueUp, board.length);
  const carved = past.of(carvingJobOf, job.chambers, job.keepOuts, job.jointKeepOuts, job.routing);
  const glued = past.of(gluingJobOf, carved, job.dots, job.board, job.glueUp, job.shaped);
  const isMirrored = !drawn && isAlike(laid, glued);
  const rows = drawn
    ? { layup: drawn.layup, notes: past.of(shiftedIn, drawn.notes) }
    : past.within(restaggered, board, isMirrored ? past.of(rightHalf, laid) : laid, trees, glued);
  const carving = past.within(carvingIn, board, rows.layup, trees, carved);
  const places = past.of(drawnPlaces, carving);
  const placed = past.within(placedGlue, places, board, rows.layup, trees, glued, drawn);
  const around = past.of(carvedAround, places, carving, placed.keeps, job.dots.clearance);
  const found = past.of(glueOf, around, placed, job.dots.clearance);
  const half = past.of(arranged, rows.layup, rows.notes, carving, around, found);
  const { layup, chambers: whole, glue } = isMirrored ? past.of(mirrored, half, laid, glued) : half;
  const kept = job.routed ? past.of(asRouted, whole, job.routed, layup.rows, board, trees) : whole;
  const routable = past.of(routedJobOf, carved, job.dots, job.routed, job.units);
  const { chambers, routing } = past.of(routed, board, layup, trees, kept, glue, routable);
  const isOneSided = (job.board.left ?? job.glueUp.left) !== undefined;
  // What is sawn and glued up is the board as drawn; once it is shaped, its stock is no question any more.
  const stock = drawn?.stock ?? (job.stock && past.of(stockOf, job.stock, board, laid, isOneSided, job.units));
  const solid = past.of(bareOf, board, laid);
  const bare = stock ? past.of(fromStock, solid, stock.glued) : solid;
  const short = stock && !drawn?.stock ? stockInDoubt(stock, job.stock!, job.units) : [];
  const fins = past.of(finsOf, job.fins ?? NO_FINS, job.keepOuts, job.units, job.glass);
  const unbuilt = finsInDoubt(job.fins ?? NO_FINS, fins, job.units);
  const doubts = [
    ...(job.doubts ?? []),
    ...short,
    ...unbuilt,
    ...(drawn ? [] : gluingInDoubt(laid, board.length, job.blocks.glue, job.units)),
    ...(drawn ? measuredInDoubt(job.shaped!, drawn, job.units) : []),
  ];
  const notes = [...chambers.notes, ...(drawn ? unknownChambers(job.shaped!, drawn) : [])];
  const made = { job, board, layup, trees, bare, fins, past, ...(stock && { stock }), ...(drawn && { drawn }) };
  return filled({ ...made, ...chambers, notes, glue, routing, doubts }, job);
}

/** A plan with its chambers filled, and glassed, as a job says that differs in nothing that touches a chamber. */
export function filled(plan: Omit<Plan, 'blocks' | 'weights'>, job: Job): Plan {
  const { bare, fins, layup, chambers, routing } = plan;
  const fit = { ...job.blocks, cutterRadius: job.chambers.cutterDiameter / 2 };
  const blocks = blocksOf(chambers, job.fill, fit, routing.settings, layup.rows);
  return { ...plan, job, blocks, weights: weightsOf(bare, fins, layup, chambers, blocks, job) };
}

/** One and the same, so that steps asked of it are remembered. */
const NO_FINS: readonly [] = [];

/** What is planned before the board is measured. */
function asDrawn(job: Job): Job {
  const { shaped, ...drawn } = job;
  return shaped ? drawn : job;
}

const drawnBoard = (spec: BoardSpec): Board => boardOf(spec);

/** A blank that is glued up already keeps its rows as they were shifted then. */
function shiftedIn(notes: readonly Note[]): readonly Note[] {
  return notes.filter(({ kind }) => kind === 'shifted');
}

function arranged(
  layup: Layup,
  shifted: readonly Note[],
  carving: Carving,
  around: CarvedAround,
  { glue, notes }: ReturnType<typeof glueOf>,
): Arrangement {
  return { layup, chambers: gathered(around.rows, carving, [...shifted, ...notes]), glue };
}

function isSameSurface(a: Job, b: Job): boolean {
  return a.board === b.board && a.shaped === b.shaped;
}
