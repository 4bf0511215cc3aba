import type { Board } from '../board/board.js';
import type { Chamber, Note } from '../chamber/chamber.js';
import {
  carved,
  carvingIn,
  gathered,
  type CarvedRow,
  type Carving,
  type CarvingJob,
  type Chambers,
} from '../chamber/chambers.js';
import { acrossRow, type JointOnRow } from '../chamber/onRow.js';
import type { Place } from '../chamber/row.js';
import type { Job } from '../job/job.js';
import type { Layup } from '../layup/layup.js';
import type { PatchTrees } from '../wall/patchTree.js';
import { obstacleOf, type Keep } from './around.js';
import { gluedJoints } from './asGlued.js';
import type { Dot, Glue, GlueLoss, GlueSide, Smear } from './dot.js';
import { jointFaces, type JointFace } from './jointFace.js';
import { marginOf } from './margin.js';
import { plannedJoints } from './planned.js';
import { restaggered } from './stagger.js';
import { gapTo, type Spot } from './spot.js';

export interface Gluing {
  /** As given, but for rows shifted so that their webs meet. */
  readonly layup: Layup;
  /** Carved around the glue. */
  readonly chambers: Chambers;
  readonly glue: Glue;
}

export type GluingJob = CarvingJob & Pick<Job, 'dots' | 'board' | 'glueUp' | 'shaped'>;

/**
 * Places the dots and carves the chambers around them. Chambers are first carved as if there were no glue; dots are planned among them, or taken
 * as the job says they landed; then every place that glue comes too near to is carved again, and no other.
 */
export function glued(board: Board, given: Layup, trees: PatchTrees, job: GluingJob): Gluing {
  const shifted = restaggered(board, given, trees, job);
  const { layup } = shifted;
  const carving = carvingIn(board, layup, trees, job);
  const unglued = carved(carving);
  const faces = jointFaces(layup);
  const planned = plannedJoints(board, faces, trees, chambersOf(unglued), job);
  const { joints, notes } = gluedJoints(board, faces, trees, job.dots);
  notes.push(...unmetKeepOuts(faces, job));

  const spots: Spot[] = [];
  const keeps: Keep[] = [];
  faces.forEach((face, i) => {
    const glued = joints.get(face.joint.id);
    const landed = [...(glued?.dots ?? []), ...(glued?.smears ?? [])];
    if (!glued?.dots) {
      spots.push(...planned[i]!.spots);
      keeps.push(...planned[i]!.keeps);
      notes.push(...planned[i]!.notes);
    }
    spots.push(...landed);
    for (const spot of landed) {
      const swallowed = job.dots.may.includes('swallow');
      for (const at of face.rows) keeps.push({ spot, at, obstacle: obstacleOf(spot, at, job.dots), swallowed });
    }
  });

  const { rows, losses } = carvedAround(unglued, carving, keeps, job.dots.clearance);
  const sides = sidesOf(rows, keeps, losses);
  const isGlued = (spot: Spot) => joints.get(spot.joint)?.dots?.includes(spot) ?? false;
  const smears = new Set([...joints.values()].flatMap((joint) => joint.smears));
  const glue: Glue = {
    dots: spots
      .filter((spot) => !smears.has(spot))
      .map((spot) => dotOf(spot, isGlued(spot), faces, board, trees, sides)),
    smears: spots.filter((spot) => smears.has(spot)).map((spot) => smearOf(spot, sides)),
    losses,
  };
  const chambers = gathered(rows, carving.asked);
  return {
    layup,
    glue,
    chambers: {
      ...chambers,
      notes: [...chambers.notes, ...shifted.notes, ...notes, ...glueNotes(rows, keeps, sides, job.dots.clearance)],
    },
  };
}

/** Keep-outs drawn on a joint that is never opened, or not there at all: no chamber is open to it. */
function unmetKeepOuts(faces: readonly JointFace[], { jointKeepOuts }: GluingJob): Note[] {
  const by = faces.map(({ joint }) => joint.id);
  return jointKeepOuts.flatMap(({ name, joint }): Note[] =>
    by.includes(joint) ? [] : [{ kind: 'glue', where: `${name} (${joint})`, why: 'no-joint', by }],
  );
}

function chambersOf(rows: readonly CarvedRow[]): Chamber[] {
  return rows.flatMap(({ places }) => places.flatMap(({ chambers }) => chambers));
}

/** Rounds of carving: a split for one dot may uncover another that was swallowed. */
const ROUNDS = 3;

function carvedAround(unglued: readonly CarvedRow[], { keepOuts }: Carving, keeps: readonly Keep[], clearance: number) {
  const losses: GlueLoss[] = [];
  const rows = unglued.map(({ carving, places }): CarvedRow => {
    const here = keeps.filter(({ at }) => at.row.id === carving.row.id);
    if (here.length === 0) return { carving, places };
    return {
      carving,
      places: places.map((unglued): Place => {
        let place = unglued;
        const offenders = new Set<Keep>();
        for (let round = 0; round < ROUNDS; round++) {
          const more = here.filter((keep) => !offenders.has(keep) && offends(place.chambers, keep, clearance));
          if (more.length === 0) break;
          more.forEach((keep) => offenders.add(keep));
          const around = here.filter((keep) => !keep.swallowed || offenders.has(keep));
          place = carving.carve(place.slot, [...keepOuts, ...around.map(({ obstacle }) => obstacle)]);
        }
        if (place !== unglued) {
          losses.push({
            place: `${carving.row.id}-${String(place.slot.place).padStart(2, '0')}`,
            by: [...offenders].map(({ spot }) => spot.name),
            before: volumeOf(unglued),
            after: volumeOf(place),
          });
        }
        return place;
      }),
    };
  });
  return { rows, losses };
}

function volumeOf({ chambers }: Place): number {
  return chambers.reduce((sum, { volume }) => sum + volume, 0);
}

/** Gaps that differ by less, mm, are the same but for rounding. */
const ROUNDING = 1e-6;

/** Whether one of the chambers comes nearer to glue than the clearance, unless it swallows it as allowed. */
function offends(chambers: readonly Chamber[], { spot, at, swallowed, obstacle }: Keep, clearance: number): boolean {
  return chambers.some((chamber) => {
    if (chamber.depth[1] <= obstacle.beyond) return false;
    const { gap, inside } = gapTo(chamber.profile, onRow(spot, at));
    const enough = gap >= spot.radius + clearance - ROUNDING;
    return inside ? !(enough && swallowed) : !enough;
  });
}

/** The middle line of glue in the frame of the row's own face. */
function onRow({ from, to }: Spot, at: JointOnRow): Pick<Spot, 'from' | 'to'> {
  return { from: [acrossRow(at, from[0]).s, from[1]], to: [acrossRow(at, to[0]).s, to[1]] };
}

type Sides = ReadonlyMap<Spot, readonly GlueSide[]>;

/** What glue meets on either side, in the chambers as carved. */
function sidesOf(rows: readonly CarvedRow[], keeps: readonly Keep[], losses: readonly GlueLoss[]): Sides {
  const sides = new Map<Spot, GlueSide[]>();
  for (const keep of keeps) {
    const { spot, at } = keep;
    const row = rows.find(({ carving }) => carving.row.id === at.row.id)!;
    const open = chambersOf([row]).filter(({ depth }) => depth[1] > keep.obstacle.beyond);
    const trimmed = losses.some(({ place, by }) => place.startsWith(`${at.row.id}-`) && by.includes(spot.name));
    const side = sideOf(onRow(spot, at), open, trimmed);
    sides.set(spot, [...(sides.get(spot) ?? []), { row: at.row.id, ...side }]);
  }
  return sides;
}

function sideOf(
  line: Pick<Spot, 'from' | 'to'>,
  chambers: readonly Chamber[],
  trimmed: boolean,
): Omit<GlueSide, 'row'> {
  const middle = (line.from[0] + line.to[0]) / 2;
  const ends = chambers.map((chamber) => {
    const s = chamber.profile.map(([each]) => each);
    return { chamber, from: Math.min(...s), to: Math.max(...s) };
  });
  const around = ends.find(({ from, to }) => from < middle && middle < to)?.chamber;
  if (around) return { way: gapTo(around.profile, line).inside ? 'swallowed' : 'passed', chambers: [around.id] };
  const before = ends.filter(({ to }) => to <= middle).at(-1)?.chamber;
  const behind = ends.find(({ from }) => from >= middle)?.chamber;
  const beside = [before, behind].flatMap((chamber) => (chamber ? [chamber.id] : []));
  if (before && behind && before.place === behind.place) return { way: 'split', chambers: beside };
  return { way: trimmed ? 'trimmed' : beside.length < 2 ? 'end' : 'web', chambers: beside };
}

function dotOf(
  spot: Spot,
  glued: boolean,
  faces: readonly JointFace[],
  board: Board,
  trees: PatchTrees,
  sides: Sides,
): Dot {
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
    margin: marginOf(face, spot.from, spot.radius, board, trees),
    sides: sides.get(spot) ?? [],
  };
}

function smearOf(spot: Spot, sides: Sides): Smear {
  const { name, joint, from, to, radius } = spot;
  return { id: name, joint, from, to, width: 2 * radius, sides: sides.get(spot) ?? [] };
}

/** Glue that a cutter will meet because the job allows it, and glue that a chamber still comes too near to. */
function glueNotes(rows: readonly CarvedRow[], keeps: readonly Keep[], sides: Sides, clearance: number): Note[] {
  const swallowed = [...sides].flatMap(([{ name, from }, each]): Note[] => {
    const by = each.flatMap(({ way, chambers }) => (way === 'swallowed' ? chambers : []));
    return by.length > 0 ? [{ kind: 'glue', where: name, why: 'swallowed', by, at: from[0] }] : [];
  });
  const near = keeps.flatMap((keep): Note[] => {
    const chambers = chambersOf(rows.filter(({ carving }) => carving.row.id === keep.at.row.id));
    const by = chambers.filter((chamber) => offends([chamber], keep, clearance)).map(({ id }) => id);
    return by.length > 0
      ? [{ kind: 'glue', where: keep.spot.name, why: 'too-near', by, at: keep.spot.from[0], needs: clearance }]
      : [];
  });
  return [...swallowed, ...near];
}
