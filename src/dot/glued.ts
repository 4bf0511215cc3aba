import type { Board } from '../board/board.js';
import type { Chamber, Note } from '../chamber/chamber.js';
import { carvingIn, drawn, gathered, shapesOf, type Chambers } from '../chamber/chambers.js';
import type { GluingJob } from './gluingJob.js';
import type { Layup } from '../layup/layup.js';
import type { PatchTrees } from '../wall/patchTree.js';
import { obstacleOf, type Keep } from './around.js';
import { gluedJoints } from './asGlued.js';
import { carvedAround } from './carvedAround.js';
import type { Dot, Glue, Smear } from './dot.js';
import { glueNotes, unmetKeepOuts } from './glueNotes.js';
import { jointFaces, type JointFace } from './jointFace.js';
import { planeOf, plannedJoints, type PlacedDot } from './planned.js';
import { restaggered } from './stagger.js';
import { sidesOf, type Sides } from './sides.js';
import type { DotSpot, Spot } from './spot.js';

export interface Gluing {
  /** As given, but for rows shifted so that their webs meet. */
  readonly layup: Layup;
  /** Carved around the glue. */
  readonly chambers: Chambers;
  readonly glue: Glue;
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
 * Places the dots and carves the chambers around them. Chambers are first drawn as if there were no glue; dots are
 * planned among them, or taken as the job says they landed; every place that glue comes too near to is drawn again, and
 * no other; what is drawn last is proved.
 *
 * @param made where the blank is glued up already: its dots are taken as they are, not planned anew
 */
export function glued(
  board: Board,
  given: Layup,
  trees: PatchTrees,
  job: GluingJob,
  before?: Before,
  made?: Made,
): Gluing {
  const shifted = made
    ? { layup: made.layup, notes: made.notes.filter(({ kind }) => kind === 'shifted') }
    : restaggered(board, given, trees, job);
  const { layup } = shifted;
  const carving = carvingIn(board, layup, trees, job, before?.chambers);
  const unglued = drawn(carving);
  const faces = jointFaces(layup);
  const { joints, notes } = gluedJoints(board, faces, trees, job.dots, made?.board);
  const shapes = unglued.flatMap(shapesOf);
  const planned = plannedJoints(board, faces, trees, shapes, job, before && placesOf(before), made?.glue.dots);
  notes.push(...unmetKeepOuts(faces, job));

  const dots: DotSpot[] = [];
  const smears: Spot[] = [];
  const keeps: Keep[] = [];
  faces.forEach((face, i) => {
    const landed = joints.get(face.joint.id);
    if (landed?.dots) dots.push(...landed.dots);
    else {
      dots.push(...planned[i]!.dots);
      keeps.push(...planned[i]!.keeps);
      notes.push(...planned[i]!.notes);
    }
    smears.push(...(landed?.smears ?? []));
    const swallowed = job.dots.may.includes('swallow');
    for (const spot of [...(landed?.dots ?? []), ...(landed?.smears ?? [])])
      for (const at of face.rows) keeps.push({ spot, at, obstacle: obstacleOf(spot, at, job.dots), swallowed });
  });

  const { rows, losses } = carvedAround(unglued, carving, keeps, job.dots.clearance);
  const sides = sidesOf(rows, keeps, losses);
  const isGlued = (spot: DotSpot) => joints.get(spot.joint)?.dots?.includes(spot) ?? false;
  const glue: Glue = {
    dots: dots.map((spot) => dotOf(spot, isGlued(spot), faces, sides)),
    smears: smears.map((spot) => smearOf(spot, sides)),
    losses,
  };
  const chambers = gathered(rows, carving);
  return {
    layup,
    glue,
    chambers: {
      ...chambers,
      notes: [...chambers.notes, ...shifted.notes, ...notes, ...glueNotes(rows, keeps, sides, job.dots.clearance)],
    },
  };
}

/** Every dot of a plan in the plane of its own joint: another glue-up may have a joint of the same name elsewhere. */
function placesOf({ glue, layup: { joints } }: Before): PlacedDot[] {
  return glue.dots.flatMap((dot) => {
    const joint = joints.find(({ id }) => id === dot.joint);
    return joint ? [{ ...dot, plane: planeOf(joint) }] : [];
  });
}

function dotOf(spot: DotSpot, glued: boolean, faces: readonly JointFace[], sides: Sides): Dot {
  const { face } = faces.find(({ joint }) => joint.id === spot.joint)!;
  const [s, z] = spot.from;
  return {
    id: spot.name,
    joint: spot.joint,
    s,
    z,
    x: s * face.along[0],
    diameter: 2 * spot.radius,
    glued,
    margin: spot.margin,
    sides: sides.get(spot) ?? [],
  };
}

function smearOf(spot: Spot, sides: Sides): Smear {
  const { name, joint, from, to, radius } = spot;
  return { id: name, joint, from, to, width: 2 * radius, sides: sides.get(spot) ?? [] };
}
