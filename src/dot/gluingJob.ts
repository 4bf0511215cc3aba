import type { CarvingJob } from '../chamber/chambers.js';
import type { Job } from '../job/job.js';

/** What of a job says how the board is glued up and carved. */
export type GluingJob = CarvingJob & Pick<Job, 'dots' | 'board' | 'glueUp' | 'shaped'>;

/** These parts of a job as one thing that stays the same while they do. */
export function gluingJobOf(
  carved: CarvingJob,
  dots: Job['dots'],
  board: Job['board'],
  glueUp: Job['glueUp'],
  shaped: Job['shaped'],
): GluingJob {
  return { ...carved, dots, board, glueUp, ...(shaped && { shaped }) };
}
