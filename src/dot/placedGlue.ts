import type { Board } from '../board/board.js';
import type { Note } from '../chamber/chamber.js';
import { shapesOf, type DrawnRow } from '../chamber/chambers.js';
import { Past } from '../kept/past.js';
import type { Layup } from '../layup/layup.js';
import type { PatchTrees } from '../wall/patchTree.js';
import { obstacleOf, type Keep } from './around.js';
import { gluedJoints } from './asGlued.js';
import type { Glue } from './dot.js';
import { unmetKeepOuts } from './glueNotes.js';
import type { GluingJob } from './gluingJob.js';
import { jointFaces, type JointFace } from './jointFace.js';
import { plannedJoints } from './planned.js';
import type { DotSpot, Spot } from './spot.js';

/** Where the glue is on the dotted joints, and what chambers keep off for it. */
export interface PlacedGlue {
  readonly faces: readonly JointFace[];
  readonly dots: readonly DotSpot[];
  readonly smears: readonly Spot[];
  /** Those of the dots that lie where the job says they landed. */
  readonly landed: ReadonlySet<DotSpot>;
  readonly keeps: readonly Keep[];
  readonly notes: readonly Note[];
}

/**
 * A board as it was drawn and glued up, before it was shaped: its rows, its dots and what was said of them hold from
 * then on.
 */
export interface Made {
  readonly board: Board;
  readonly layup: Layup;
  readonly glue: Glue;
  readonly notes: readonly Note[];
}

/**
 * Places the dots among chambers drawn as if there were no glue: planned, or taken as the job says they landed.
 *
 * @param made where the blank is glued up already: its dots are taken as they are, not planned anew
 */
export function placedGlue(
  rows: readonly DrawnRow[],
  board: Board,
  layup: Layup,
  trees: PatchTrees,
  job: GluingJob,
  made?: Made,
  past: Past = new Past(),
): PlacedGlue {
  const faces = jointFaces(layup, past);
  const { joints, notes } = gluedJoints(board, faces, trees, job.dots, past, made?.board);
  const shapes = rows.flatMap(shapesOf);
  const planned = plannedJoints(board, faces, trees, shapes, job, past, made?.glue.dots);
  notes.push(...unmetKeepOuts(faces, job));

  const dots: DotSpot[] = [];
  const smears: Spot[] = [];
  const landed = new Set<DotSpot>();
  const keeps: Keep[] = [];
  const swallowed = job.dots.may.includes('swallow');
  faces.forEach((face, i) => {
    const said = joints.get(face.joint.id);
    if (said?.dots) dots.push(...said.dots);
    else {
      dots.push(...planned[i]!.dots);
      keeps.push(...planned[i]!.keeps);
      notes.push(...planned[i]!.notes);
    }
    said?.dots?.forEach((spot) => landed.add(spot));
    smears.push(...(said?.smears ?? []));
    for (const spot of [...(said?.dots ?? []), ...(said?.smears ?? [])])
      for (const at of face.rows) keeps.push({ spot, at, obstacle: obstacleOf(spot, at, job.dots), swallowed });
  });
  return { faces, dots, smears, landed, keeps, notes };
}
