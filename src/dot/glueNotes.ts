import type { Note } from '../chamber/chamber.js';
import { chambersOf, type CarvedRow } from '../chamber/chambers.js';
import type { Job } from '../job/job.js';
import { dotName } from '../job/names.js';
import type { DotSpec } from '../job/spec/dots.js';
import type { Keep } from './around.js';
import { offends } from './carvedAround.js';
import { unknownJoint, type JointFace, type Lines } from './jointFace.js';
import type { Sides } from './sides.js';
import type { DotSpot } from './spot.js';

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

/**
 * Dots that are said to have landed, without their height, on a joint where some are planned above or below the middle
 * of the face: taken to lie in the middle, chambers would not keep off them.
 *
 * @param surface of the board as it was drawn when it was glued up
 */
export function untoldHeights(
  { joint }: JointFace,
  surface: Lines,
  planned: readonly DotSpot[],
  { glued, clearance }: DotSpec,
): Note[] {
  const middle = (s: number) => (surface.top(s) + surface.bottom(s)) / 2;
  const isOff = ({ from: [s, z] }: DotSpot) => Math.abs(z - middle(s)) > clearance;
  if (!planned.some(isOff)) return [];
  const landed = glued.find((one) => one.joint === joint.id)?.dots ?? [];
  return landed.flatMap(({ x, height }, i): Note[] =>
    height ? [] : [{ kind: 'glue', where: dotName(joint, i + 1), why: 'untold-height', by: [], at: x }],
  );
}
