import type { Plan } from '../plan.js';
import type { Stage } from '../job/spec/stage.js';

/** The phase that ends with the weighing of a stage. */
const ENDS: Readonly<Record<Stage, string>> = {
  blank: 'glue-up',
  shaped: 'shape',
  chambered: 'routing',
  filled: 'glue-back',
  sealed: 'seal',
  laminated: 'laminate',
  'hot-coated': 'coat',
  fitted: 'fit',
  finished: 'sand',
};

/**
 * How many of these phases are done, by what the job says: a phase is when something was written down that comes at its
 * end, or at the end of a later one.
 */
export function furthest({ job, layup }: Plan, phases: readonly string[]): number {
  const routed = new Set(job.routed?.map(({ row }) => row));
  const reached = [
    ...(job.weighings ?? []).map(({ stage }) => ENDS[stage]),
    ...(job.dots.glued.length > 0 ? ['glue-up'] : []),
    ...(job.shaped?.length ? ['shape'] : []),
    ...(layup.rows.length > 0 && layup.rows.every(({ id }) => routed.has(id)) ? ['routing'] : []),
  ];
  return Math.max(0, ...reached.map((id) => phases.indexOf(id) + 1));
}
