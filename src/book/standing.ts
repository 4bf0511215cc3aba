import type { Phase } from './phases.js';

/**
 * Where a phase stands: done; the one at hand; one that can be begun beside it; or one that waits for others, by their
 * numbers.
 */
export type Standing =
  { readonly state: 'done' | 'now' | 'ready' } | { readonly state: 'waiting'; readonly waitsFor: readonly number[] };

/** What is known of the work beside the job: what was ticked, and phases that are finished whatever was ticked. */
export interface Progress {
  readonly isTicked: (phase: string, line: string) => boolean;
  readonly finished: ReadonlySet<string>;
}

export const NOTHING_KNOWN: Progress = { isTicked: () => false, finished: new Set() };

/** A phase as far as it takes to say where it stands. */
type Standable = Pick<Phase, 'id' | 'number' | 'after' | 'isReached'> & {
  readonly steps: readonly Pick<Phase['steps'][number], 'id'>[];
};

/**
 * Where each phase stands, by its name. One is done when the job holds what is written down at its end, when it is
 * finished, when all its steps are ticked, or when one is done that comes after it.
 */
export function standingsOf(
  phases: readonly Standable[],
  { isTicked, finished }: Progress = NOTHING_KNOWN,
): ReadonlyMap<string, Standing> {
  const isOver = ({ id, isReached, steps }: Standable) =>
    isReached || finished.has(id) || steps.every((step) => isTicked(id, step.id));
  const done = new Set<string>();
  // From the end: what comes before a phase stands before it in the list.
  for (const phase of phases.toReversed()) {
    if (!done.has(phase.id) && !isOver(phase)) continue;
    done.add(phase.id);
    for (const before of phase.after) done.add(before);
  }
  const waitsFor = ({ after }: Standable) =>
    phases.filter(({ id }) => after.includes(id) && !done.has(id)).map(({ number }) => number);
  const open = phases.filter((phase) => !done.has(phase.id) && waitsFor(phase).length === 0);
  const toCome = chainsFrom(phases);
  const most = Math.max(...open.map(({ id }) => toCome.get(id)!));
  const now = open.find(({ id }) => toCome.get(id) === most);
  return new Map(
    phases.map((phase): readonly [string, Standing] => {
      if (done.has(phase.id)) return [phase.id, { state: 'done' }];
      if (phase === now) return [phase.id, { state: 'now' }];
      const waits = waitsFor(phase);
      return [phase.id, waits.length === 0 ? { state: 'ready' } : { state: 'waiting', waitsFor: waits }];
    }),
  );
}

/**
 * From each phase to the end of the work, how many phases come one after the other at most. The one at hand is the one
 * that holds up most (critical path: J. E. Kelley, M. R. Walker, "Critical-Path Planning and Scheduling", 1959; from
 * memory).
 */
function chainsFrom(phases: readonly Standable[]): ReadonlyMap<string, number> {
  const chains = new Map<string, number>();
  for (const { id } of phases.toReversed()) {
    const next = phases.filter(({ after }) => after.includes(id)).map((each) => chains.get(each.id)!);
    chains.set(id, 1 + Math.max(0, ...next));
  }
  return chains;
}
