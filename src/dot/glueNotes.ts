import type { Note } from '../chamber/chamber.js';
import { chambersOf, type CarvedRow } from '../chamber/chambers.js';
import type { Job } from '../job/job.js';
import type { Keep } from './around.js';
import { offends } from './carvedAround.js';
import { unknownJoint, type JointFace } from './jointFace.js';
import type { Sides } from './sides.js';

/** Keep-outs drawn on a joint that is never opened, or not there at all: no chamber is open to it. */
export function unmetKeepOuts(faces: readonly JointFace[], { jointKeepOuts }: Pick<Job, 'jointKeepOuts'>): Note[] {
  const by = faces.map(({ joint }) => joint.id);
  return jointKeepOuts.flatMap(({ name, joint }): Note[] =>
    by.includes(joint) ? [] : [unknownJoint(`${name} (${joint})`, faces)],
  );
}

/** Glue that a cutter will meet because the job allows it, and glue that a chamber still comes too near to. */
export function glueNotes(rows: readonly CarvedRow[], keeps: readonly Keep[], sides: Sides, clearance: number): Note[] {
  const swallowed = [...sides].flatMap(([{ name, from }, each]): Note[] => {
    const by = each.flatMap(({ way, chambers }) => (way === 'swallowed' ? chambers : []));
    return by.length > 0 ? [{ kind: 'glue', where: name, why: 'swallowed', by, at: from[0] }] : [];
  });
  const near = keeps.flatMap((keep): Note[] => {
    const chambers = rows.filter(({ carving }) => carving.row.id === keep.at.row.id).flatMap(chambersOf);
    const by = chambers.filter((chamber) => offends([chamber], keep, clearance)).map(({ id }) => id);
    return by.length > 0
      ? [{ kind: 'glue', where: keep.spot.name, why: 'too-near', by, at: keep.spot.from[0], needs: clearance }]
      : [];
  });
  return [...swallowed, ...near];
}
