import type { CarvingJob } from '../chamber/chambers.js';
import type { Job } from '../job/job.js';

/** What of a job says how the board is glued up and carved. */
export type GluingJob = CarvingJob & Pick<Job, 'dots' | 'board' | 'glueUp' | 'shaped'>;
