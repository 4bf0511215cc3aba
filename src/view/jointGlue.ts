import { glueFor } from '../block/glue/batches.js';
import type { Joint } from '../layup/layup.js';
import type { Plan } from '../plan.js';
import { poured } from '../length/weight.js';
import { USUAL } from '../weigh/usual.js';
import { gluedFaces, type GluedFace } from './gluedFaces.js';
import { faceInGlueUp } from './memberInGlueUp.js';

/** Glue that stays in a joint, g/m²: as the board is weighed with, corrected by what the scale has said. */
export function jointSpread({ weights }: Pick<Plan, 'weights'>): number {
  return weights.unknowns.find(({ id }) => id === 'jointGlue')!.learned.value;
}

/** Glue for a joint when the blank is glued up, what stays in the cup included, g: of a dotted one its dots alone. */
export function glueUpGlue(plan: Plan, face: GluedFace): number {
  const { joint } = face;
  const dots = plan.glue.dots.filter((dot) => dot.joint === joint.id);
  const area =
    joint.kind === 'dotted'
      ? dots.reduce((sum, { diameter }) => sum + (Math.PI * diameter ** 2) / 4, 0)
      : faceToGlue(plan, face).area;
  return spreadOver(plan, area);
}

/**
 * The face of a joint as it is glued up: how long, mm, and how large, mm². As it is milled where the stock says that;
 * else as the finished board has it, with what is usually left above and below.
 */
export function faceToGlue(plan: Plan, { joint, from, to, area }: GluedFace): { length: number; area: number } {
  const { milling } = plan.job.stock ?? {};
  const over = milling ? milling.above + milling.below : 2 * USUAL.blankOver.value;
  const length = Math.hypot(1, joint.slope) * (to - from);
  return faceInGlueUp(plan, joint) ?? { length, area: area + length * over };
}

/** Glue for an opened joint when it comes together again, over the whole face, g. */
export function glueBackGlue(plan: Plan, face: GluedFace): number {
  return spreadOver(plan, face.area);
}

/** Of all joints of a kind, each joint's as it is poured, g. */
export function jointGlue(plan: Plan, kind: Joint['kind'], glue: typeof glueUpGlue): number {
  return gluedFaces(plan)
    .filter(({ joint }) => joint.kind === kind)
    .reduce((sum, face) => sum + 1000 * poured(glue(plan, face) / 1000, plan.job.units), 0);
}

function spreadOver(plan: Plan, area: number): number {
  return glueFor(area, { spread: jointSpread(plan), loss: plan.job.blocks.glue.loss });
}
