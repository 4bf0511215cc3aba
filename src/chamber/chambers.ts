import type { Board } from '../board/board.js';
import { PATCHES, type Patch } from '../board/mesh.js';
import type { ChamberSpec, Job } from '../job/job.js';
import type { Layup } from '../layup/layup.js';
import type { PatchTrees } from '../wall/patchTree.js';
import type { Chamber, Note, Web } from './chamber.js';
import { chambersOf, SHELL_ALLOWANCE } from './row.js';
import { shellOf } from './shell.js';

/** All chambers of a board, rows from left to right, each from nose to tail. */
export interface Chambers {
  readonly chambers: readonly Chamber[];
  readonly webs: readonly Web[];
  readonly notes: readonly Note[];
  /** What every wall must be at least, the routing tolerance included, mm. */
  readonly asked: Readonly<Record<Patch, number>>;
}

export function chambersIn(
  board: Board,
  layup: Layup,
  trees: PatchTrees,
  job: Pick<Job, 'chambers' | 'keepOuts'>,
): Chambers {
  const spec = job.chambers;
  const asked = askedWalls(spec);
  const shell = shellOf(board.grid, board.mesh, widened(asked, SHELL_ALLOWANCE));
  const proof = { trees, chordError: board.mesh.chordError, asked };
  const rows = layup.rows.map((row) => chambersOf(row, { board, shell, proof, spec, keepOuts: job.keepOuts }));
  return {
    chambers: rows.flatMap((row) => row.chambers),
    webs: rows.flatMap((row) => websOf(row.chambers)),
    notes: rows.flatMap((row) => row.notes),
    asked,
  };
}

/** The walls a builder asks for, each with the routing tolerance on top. */
export function askedWalls(spec: ChamberSpec): Record<Patch, number> {
  const { deckSkin, bottomSkin, railWall, tolerance } = spec;
  return { deck: deckSkin + tolerance, bottom: bottomSkin + tolerance, rail: railWall + tolerance };
}

function widened(walls: Record<Patch, number>, by: number): Record<Patch, number> {
  return Object.fromEntries(PATCHES.map((patch) => [patch, walls[patch] + by])) as Record<Patch, number>;
}

function websOf(chambers: readonly Chamber[]): Web[] {
  return chambers.slice(1).map((chamber, i): Web => {
    const before = chambers[i]!;
    return { row: chamber.row, between: [before.id, chamber.id], from: endOf(before), to: startOf(chamber) };
  });
}

function startOf({ profile }: Chamber): number {
  return Math.min(...profile.map(([s]) => s));
}

function endOf({ profile }: Chamber): number {
  return Math.max(...profile.map(([s]) => s));
}
