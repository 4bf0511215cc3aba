import type { TrackedBlock } from '../log/trackedBlock.js';

/** A plan as it once was. */
export interface PlanRecord {
  /** 1 and up, in the order the plans were first seen. */
  readonly number: number;
  readonly recorded: number;
  readonly job: string;
  readonly blocks: readonly TrackedBlock[];
}

/** A row of the plans: number, recorded, job, blocks as JSON. */
export type PlanFields = readonly [number, number, string, string];

export const PLAN_COLUMNS = 'number, recorded, job, blocks';

/** The plan that a row of the plans holds. */
export function planOfRow([number, recorded, job, blocks]: PlanFields): PlanRecord {
  return { number, recorded, job, blocks: JSON.parse(blocks) as TrackedBlock[] };
}

/** Whether two plans say the same, whatever their numbers. */
export function isSamePlan(a: Pick<PlanRecord, 'job' | 'blocks'>, b: Pick<PlanRecord, 'job' | 'blocks'>): boolean {
  return a.job === b.job && JSON.stringify(a.blocks) === JSON.stringify(b.blocks);
}
