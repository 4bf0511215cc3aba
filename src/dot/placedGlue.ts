import type { Board } from '../board/board.js';
import type { Chamber, Note } from '../chamber/chamber.js';
import { shapesOf, type DrawnRow } from '../chamber/chambers.js';
import type { Layup } from '../layup/layup.js';
import type { PatchTrees } from '../wall/patchTree.js';
import { obstacleOf, type Keep } from './around.js';
import { gluedJoints } from './asGlued.js';
import type { Glue } from './dot.js';
import { unmetKeepOuts } from './glueNotes.js';
import type { GluingJob } from './gluingJob.js';
import { jointFaces, type JointFace } from './jointFace.js';
import { planeOf, plannedJoints, type PlacedDot } from './planned.js';
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

/** Of a plan made before on the same surface: it changes nothing but the time it takes. */
export interface Before {
  readonly chambers: readonly Chamber[];
  readonly glue: Glue;
  readonly layup: Pick<Layup, 'joints'>;
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
  before?: Before,
  made?: Made,
): PlacedGlue {
  const faces = jointFaces(layup);
  const { joints, notes } = gluedJoints(board, faces, trees, job.dots, made?.board);
  const shapes = rows.flatMap(shapesOf);
  const planned = plannedJoints(board, faces, trees, shapes, job, before && placesOf(before), made?.glue.dots);
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

/** Every dot of a plan in the plane of its own joint: another glue-up may have a joint of the same name elsewhere. */
function placesOf({ glue, layup: { joints } }: Before): PlacedDot[] {
  return glue.dots.flatMap((dot) => {
    const joint = joints.find(({ id }) => id === dot.joint);
    return joint ? [{ ...dot, plane: planeOf(joint) }] : [];
  });
}
