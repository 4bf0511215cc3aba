import type { Plan } from '../plan.js';
import type { WeightFindings } from '../sheet/weights/weightsPages.js';
import { compareStagger } from '../steer/stagger.js';
import { steer } from '../steer/steer.js';

/**
 * What of the weight report takes plans of its own: the same board with its webs in line, and the target where the job
 * has one.
 *
 * @param onProgress told how many of the plans are made
 */
export function foundByTrial(plan: Plan, onProgress: (done: number, of: number) => void = () => {}): WeightFindings {
  const { job } = plan;
  return { stagger: compareStagger(plan), ...(job.target && { steered: steer(plan, job, job.target, onProgress) }) };
}
