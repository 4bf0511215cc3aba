import { planOf, type Plan } from '../plan.js';
import { stiffnessOf, type Stiffness } from '../weigh/stiffness.js';

/** The same board with its rows staggered as the job has them, and with all webs in line. */
export interface StaggerCompared {
  readonly asPlanned: Stiffness;
  readonly inLine: Stiffness;
}

/**
 * Plans the board a second time, without stagger, and compares. Takes about as long as a plan.
 */
export function compareStagger(plan: Plan): StaggerCompared {
  const { job } = plan;
  const inLine = planOf({ ...job, chambers: { ...job.chambers, stagger: 0 } }, plan);
  return { asPlanned: stiffnessIn(plan), inLine: stiffnessIn(inLine) };
}

function stiffnessIn({ board, layup, chambers, job }: Plan): Stiffness {
  return stiffnessOf(board, layup, chambers, job);
}
