import { glueFor } from '../block/glue/batches.js';
import type { Joint } from '../layup/layup.js';
import type { Plan } from '../plan.js';
import { USUAL } from '../weigh/usual.js';
import { gluedFaces, type GluedFace } from './gluedFaces.js';

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
      : face.area + (face.to - face.from) * over(plan);
  return spreadOver(plan, area);
}

/** Glue for an opened joint when it comes together again, over the whole face, g. */
export function glueBackGlue(plan: Plan, face: GluedFace): number {
  return spreadOver(plan, face.area);
}

/** Of all joints of a kind, whole grams, each joint's rounded up as it is poured. */
export function jointGlue(plan: Plan, kind: Joint['kind'], glue: typeof glueUpGlue): number {
  return gluedFaces(plan)
    .filter(({ joint }) => joint.kind === kind)
    .reduce((sum, face) => sum + Math.ceil(glue(plan, face)), 0);
}

function spreadOver(plan: Plan, area: number): number {
  return glueFor(area, { spread: jointSpread(plan), loss: plan.job.blocks.glue.loss });
}

/** What a face is higher before it is shaped, above and below together, mm. */
function over({ job }: Plan): number {
  return job.stock ? job.stock.milling.above + job.stock.milling.below : 2 * USUAL.blankOver.value;
}
