import words from '../../templates/phases.json' with { type: 'json' };
import type { Finding } from '../finding/finding.js';
import type { Plan } from '../plan.js';
import { phasesOnce } from '../sheet/book/bookPages.js';
import { say } from '../words/say.js';
import type { Paper } from './paper.js';

/**
 * Names of the papers that belong to a phase, its page of the build book first among them; those that are only printed
 * on request are left out.
 *
 * @returns what is wrong, where this board has no such phase
 */
export function namesOfPhase(plan: Plan, papers: readonly Paper[], id: string, where: string): string[] | Finding {
  const phases = phasesOnce(plan);
  const phase = phases.find((each) => each.id === id);
  if (!phase) {
    const { what, remedy } = words.words.noPhase;
    return {
      where,
      what: say(what, { id }),
      remedy: say(remedy, { phases: phases.map((each) => each.id).join(', ') }),
    };
  }
  return papers
    .filter(({ kind, goes }) => goes !== 'on request' && (kind === 'book' || phase.papers.includes(kind)))
    .map(({ name }) => name);
}
