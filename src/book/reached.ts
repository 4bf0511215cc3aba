import type { Stage } from '../job/spec/stage.js';
import type { Plan } from '../plan.js';

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

/** The phases of which the job holds what is written down at their end. */
export function reachedIn({ job, layup }: Plan): ReadonlySet<string> {
  const routed = new Set(job.routed?.map(({ row }) => row));
  return new Set([
    ...(job.weighings ?? []).map(({ stage }) => ENDS[stage]),
    ...(job.dots.glued.length > 0 ? ['glue-up'] : []),
    ...(job.shaped?.length ? ['shape'] : []),
    ...(layup.rows.length > 0 && layup.rows.every(({ id }) => routed.has(id)) ? ['routing'] : []),
  ]);
}
