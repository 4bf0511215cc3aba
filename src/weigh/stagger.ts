import type { Chamber } from '../chamber/chamber.js';
import type { Job } from '../job/job.js';
import { stiffnessOf, type Stiffness } from './stiffness.js';
import { tryChambers, type Bench } from './trial.js';

/** The same board with its rows staggered as the job has them, and with all webs in line. */
export interface StaggerCompared {
  readonly asPlanned: Stiffness;
  readonly inLine: Stiffness;
}

/**
 * Routes the board a second time, without stagger and as if it were not glued up yet, and compares. Takes about as long
 * as a plan.
 */
export function compareStagger(bench: Bench & { readonly chambers: readonly Chamber[] }, job: Job): StaggerCompared {
  const { board, layup, trees, bare, chambers } = bench;
  const inLine = tryChambers({ board, layup, trees, bare }, { ...job, chambers: { ...job.chambers, stagger: 0 } });
  return {
    asPlanned: stiffnessOf(board, layup, chambers, job),
    inLine: stiffnessOf(board, inLine.layup, inLine.chambers, job),
  };
}
