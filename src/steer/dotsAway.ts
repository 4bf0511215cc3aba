import { planOf, type Plan } from '../plan.js';
import { stiffnessOf } from '../weigh/stiffness.js';

/** What a board would gain if every dot that a chamber can take whole were routed away. */
export interface DotsAway {
  /** How many blocks fewer there would be to make. */
  readonly blocks: number;
  /** How much less the finished board would weigh, kg. */
  readonly weight: number;
  /** By what share more it would give in the middle when it hangs between two crests: less where this is negative. */
  readonly softer: number;
}

/** By a plan of its own; undefined where the job allows it already, or nothing would be gained. */
export function dotsAway(plan: Plan): DotsAway | undefined {
  const { job } = plan;
  if (job.dots.may.includes('swallow') || plan.glue.dots.length === 0) return undefined;
  const other = planOf({ ...job, dots: { ...job.dots, may: [...job.dots.may, 'swallow'] } }, plan);
  const [now, then] = [plan, other].map(({ blocks, weights, board, layup, chambers }) => ({
    blocks: blocks.length,
    weight: weights.stages[weights.stages.length - 1]!.weight,
    sag: stiffnessOf(board, layup, chambers, job).sag,
  }));
  const gain = { blocks: now!.blocks - then!.blocks, weight: now!.weight - then!.weight };
  return gain.blocks > 0 || gain.weight > 0 ? { ...gain, softer: then!.sag / now!.sag - 1 } : undefined;
}
