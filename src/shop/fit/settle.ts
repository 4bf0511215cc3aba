import type { Happening } from '../log/event.js';
import type { Misfit } from './refit.js';
import type { BlockState } from '../log/state.js';
import { STEPS } from '../log/step.js';

/** What a builder can tell about a block that a changed plan no longer agrees with. */
export const ANSWERS = ['trimmed', 'turned', 'kept', 'marked-again', 'made-new'] as const;

export type Answer = (typeof ANSWERS)[number];

export function isAnswer(word: string): word is Answer {
  return (ANSWERS as readonly string[]).includes(word);
}

/** What can be told about such a block, the likelier first; nothing where the plan or the board must be settled. */
export function answersTo({ kind }: Misfit): readonly Answer[] {
  switch (kind) {
    case 'trim':
      return ['trimmed', 'made-new'];
    case 'turn':
      return ['turned', 'made-new'];
    case 'other-foam':
      return ['made-new', 'kept'];
    case 'mark-again':
      return ['marked-again'];
    case 'new':
      return ['made-new'];
    case 'glued-in':
    case 'unused':
      return [];
  }
}

/**
 * What is recorded for an answer. What is made new begins again: every step of the old block is undone, and the new one
 * is cut.
 */
export function settled(answer: Answer, block: string, { marks }: BlockState): readonly Happening[] {
  if (answer === 'trimmed' || answer === 'turned' || answer === 'kept') return [{ kind: 'trimmed', block }];
  const undone = STEPS.filter((step) => (marks[step] ?? []).length > 0).map((step): Happening => ({
    kind: 'step',
    block,
    step,
    done: false,
  }));
  return [...undone, { kind: 'step', block, step: answer === 'made-new' ? 'cut' : 'marked', done: true }];
}
