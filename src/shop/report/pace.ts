import type { StoredEvent } from '../log/event.js';
import { STEPS, type Step } from '../log/step.js';

/** Working time a block takes at each step so far, ms. A step too seldom seen is absent; `any` is over all steps. */
export interface Pace {
  readonly any?: number;
  readonly byStep: Readonly<Partial<Record<Step, number>>>;
}

/** A gap longer than this between two steps is a break and no work, ms. Common practice, no source. */
export const BREAK = 30 * 60_000;
/** Fewer steps than this say nothing about a pace. */
export const ENOUGH = 5;

/**
 * The pace of the work so far. Each gap between one recorded step and the next is counted toward the step that ends it;
 * breaks are left out. Only what was pressed as the work went on counts (`via` the page), not what was entered
 * afterwards in one go.
 *
 * @param events the log, in any order
 */
export function paceOf(events: Iterable<StoredEvent>): Pace {
  const times: { happened: number; step: Step }[] = [];
  for (const { what, via, happened } of events) {
    if (what.kind === 'step' && what.done && via === 'page') times.push({ happened, step: what.step });
  }
  times.sort((a, b) => a.happened - b.happened);
  const gaps: { gap: number; step: Step }[] = [];
  for (let i = 1; i < times.length; i++) {
    const gap = times[i]!.happened - times[i - 1]!.happened;
    if (gap <= BREAK) gaps.push({ gap, step: times[i]!.step });
  }
  const byStep: Partial<Record<Step, number>> = {};
  for (const step of STEPS) {
    const mean = meanOf(gaps.filter((one) => one.step === step));
    if (mean !== undefined) byStep[step] = mean;
  }
  const any = meanOf(gaps);
  return any === undefined ? { byStep } : { any, byStep };
}

/** Working time left at this pace, ms, or nothing while too little has been done to say. */
export function timeLeft(left: Readonly<Record<Step, number>>, pace: Pace): number | undefined {
  if (pace.any === undefined) return undefined;
  return STEPS.reduce((sum, step) => sum + left[step] * (pace.byStep[step] ?? pace.any!), 0);
}

function meanOf(gaps: readonly { gap: number }[]): number | undefined {
  if (gaps.length < ENOUGH) return undefined;
  return gaps.reduce((sum, { gap }) => sum + gap, 0) / gaps.length;
}
