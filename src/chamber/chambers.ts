import type { Board } from '../board/board.js';
import { PATCHES, type Patch } from '../board/mesh.js';
import type { ChamberSpec, Job } from '../job/job.js';
import type { RoutingSpec } from '../job/spec/routing.js';
import { Past } from '../kept/past.js';
import type { Layup } from '../layup/layup.js';
import type { PatchTrees } from '../wall/patchTree.js';
import type { Chamber, Note, Web } from './chamber.js';
import { keepOutsOn } from './keepOut.js';
import type { Obstacle } from './obstacle.js';
import { smallOnes } from './places.js';
import {
  carvingOf,
  SHELL_ALLOWANCE,
  type DrawnPlace,
  type RowPlace,
  type RowCarving,
  type DrawnChamber,
} from './row.js';
import { shellOf } from './shell.js';
import { stretchOf } from './stretch.js';

/** All chambers of a board, rows from left to right, each from nose to tail. */
export interface Chambers {
  readonly chambers: readonly Chamber[];
  readonly webs: readonly Web[];
  readonly notes: readonly Note[];
  /** What every wall must be at least, the routing tolerance included, mm. */
  readonly asked: Readonly<Record<Patch, number>>;
}

/** A board ready to be carved, and its keep-outs. */
export interface Carving {
  readonly rows: readonly RowCarving[];
  readonly keepOuts: readonly Obstacle[];
  readonly asked: Readonly<Record<Patch, number>>;
  readonly router: Pick<RoutingSpec, 'cutterLength' | 'guideStock'>;
}

/** One row's places as drawn, nose to tail. */
export interface DrawnRow {
  readonly carving: RowCarving;
  readonly drawings: readonly DrawnPlace[];
}

/** One row's places, nose to tail. */
export interface CarvedRow {
  readonly carving: RowCarving;
  readonly places: readonly RowPlace[];
}

export type CarvingJob = Pick<Job, 'chambers' | 'keepOuts' | 'jointKeepOuts' | 'routing'>;

/** These parts of a job as one thing that stays the same while they do. */
export function carvingJobOf(
  chambers: Job['chambers'],
  keepOuts: Job['keepOuts'],
  jointKeepOuts: Job['jointKeepOuts'],
  routing: Job['routing'],
): CarvingJob {
  return { chambers, keepOuts, jointKeepOuts, routing };
}

/** The chambers of a board without glue in their way. */
export function chambersIn(board: Board, layup: Layup, trees: PatchTrees, job: CarvingJob): Chambers {
  const carving = carvingIn(board, layup, trees, job);
  const rows = drawnPlaces(carving).map(({ carving, drawings }) => ({
    carving,
    places: drawings.map((each) => carving.prove(each)),
  }));
  return gathered(rows, carving);
}

export function carvingIn(
  board: Board,
  layup: Layup,
  trees: PatchTrees,
  job: CarvingJob,
  past: Past = new Past(),
): Carving {
  const spec = job.chambers;
  const asked = askedWalls(spec);
  const [deck, bottom, rail] = PATCHES.map((patch) => asked[patch] + SHELL_ALLOWANCE + board.rough);
  const shell = past.of(shellOf, board, deck!, bottom!, rail!);
  const proof = { trees, chordError: board.mesh.chordError, asked };
  const { cutterLength, guideStock } = job.routing;
  const setting = { board, shell, proof, thin: past.hints.thin, spec, cutterReach: cutterLength - guideStock };
  return {
    rows: layup.rows.map((row) => carvingOf(row, setting, past)),
    keepOuts: keepOutsOn(board, layup, job),
    asked,
    router: { cutterLength, guideStock },
  };
}

/** Every place of every row as drawn, with nothing but the keep-outs in the way. */
export function drawnPlaces({ rows, keepOuts }: Carving): DrawnRow[] {
  return rows.map((carving) => ({
    carving,
    drawings: carving.slots.map((slot) => carving.draw(slot, keepOuts)),
  }));
}

export function shapesOf({ drawings }: DrawnRow): DrawnChamber[] {
  return drawings.flatMap(({ shapes }) => shapes);
}

export function chambersOf({ places }: CarvedRow): Chamber[] {
  return places.flatMap(({ chambers }) => chambers);
}

/** Rows of carved places as the chambers of a board, with what else was said of them. */
export function gathered(rows: readonly CarvedRow[], { asked, router }: Carving, said: readonly Note[] = []): Chambers {
  const chambers = rows.map(chambersOf);
  return {
    chambers: chambers.flat(),
    webs: chambers.flatMap(websOf),
    notes: [...rows.flatMap((row, i) => [...notesOn(row, chambers[i]!, asked), ...cutShort(row, router)]), ...said],
    asked,
  };
}

/** The walls a builder asks for, each with the routing tolerance on top. */
export function askedWalls(spec: ChamberSpec): Record<Patch, number> {
  const { deckSkin, bottomSkin, railWall, tolerance } = spec;
  return { deck: deckSkin + tolerance, bottom: bottomSkin + tolerance, rail: railWall + tolerance };
}

/** What is said of a row as a whole, then place by place. */
function notesOn(
  { carving: { row, slots }, places }: CarvedRow,
  chambers: readonly Chamber[],
  asked: Chambers['asked'],
): Note[] {
  if (slots.length === 0) return [{ kind: 'solid', where: row.id, row: row.id, why: 'shallow', by: [] }];
  const said = places.flatMap(({ notes }) => notes);
  const left = said.filter(({ kind }) => kind === 'solid');
  const kept = left.filter(({ why }) => why === 'keep-out');
  const swallowed: Note[] =
    chambers.length === 0 && kept.length > 0 && left.every(({ why }) => why === 'keep-out' || why === 'ends')
      ? [{ kind: 'solid', where: row.id, row: row.id, why: 'keep-out', by: [...new Set(kept.flatMap(({ by }) => by))] }]
      : [];
  return [...swallowed, ...said, ...smallOnes(chambers, said, asked)];
}

/** Where the cutter and not the board ends the chambers of a row, and what cutter would do. */
function cutShort({ carving, places }: CarvedRow, { cutterLength, guideStock }: Carving['router']): Note[] {
  const short = places.filter(({ wouldGo, chambers }) => wouldGo !== undefined && chambers.length > 0);
  if (short.length === 0) return [];
  const by = short.flatMap(({ chambers }) => chambers.map(({ id }) => id));
  const needs = Math.max(...short.map(({ wouldGo = 0 }) => wouldGo)) + guideStock;
  const { id } = carving.row;
  return [{ kind: 'rout', where: id, row: id, why: 'cut-short', by, has: cutterLength, needs }];
}

/** The webs between the chambers of one row, nose to tail. */
export function websOf(chambers: readonly Chamber[]): Web[] {
  return chambers.slice(1).map((chamber, i): Web => {
    const before = chambers[i]!;
    return {
      row: chamber.row,
      between: [before.id, chamber.id],
      from: stretchOf(before.profile).to,
      to: stretchOf(chamber.profile).from,
    };
  });
}
