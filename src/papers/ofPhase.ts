import words from '../../templates/phases.json' with { type: 'json' };
import type { Phase } from '../book/phases.js';
import { standingsOf, type Standing } from '../book/standing.js';
import type { Finding } from '../finding/finding.js';
import type { Plan } from '../plan.js';
import { phasesOnce, titleOf } from '../sheet/book/bookPages.js';
import { say } from '../words/say.js';
import type { PaperKind } from '../sheet/uses.js';
import type { Paper } from './paper.js';

/** A phase of a board and the papers that are printed for it. */
export interface PhaseOfPapers {
  readonly id: string;
  /** As the build book calls it: `9 Routing`. */
  readonly title: string;
  readonly state: Standing['state'];
  /** Names of its papers, its page of the build book among them. */
  readonly names: readonly string[];
}

/**
 * The phases that a board has, each with the papers that belong to it; those that are only printed on request are left
 * out.
 */
export function phasesWithPapers(plan: Plan, papers: readonly Paper[]): PhaseOfPapers[] {
  const phases = phasesOnce(plan);
  const standings = standingsOf(phases);
  return phases.map((phase) => ({
    id: phase.id,
    title: titleOf(phase),
    state: standings.get(phase.id)!.state,
    names: papersOfPhase(phase, papers).map(({ name }) => name),
  }));
}

/** Full-size sheets come with the check of their scale and the map that they are joined by. */
const BESIDE_FULL_SIZE: readonly PaperKind[] = ['check', 'map'];

function papersOfPhase(phase: Phase, papers: readonly Paper[]): Paper[] {
  const own = papers.filter(({ kind, goes }) => goes !== 'on request' && phase.papers.includes(kind));
  const beside: readonly PaperKind[] = ['book', ...(own.some(({ fullSize }) => fullSize) ? BESIDE_FULL_SIZE : [])];
  return papers.filter((paper) => own.includes(paper) || beside.includes(paper.kind));
}

/**
 * Names of the papers that belong to a phase.
 *
 * @returns what is wrong, where this board has no such phase
 */
export function namesOfPhase(
  plan: Plan,
  papers: readonly Paper[],
  id: string,
  where: string,
): readonly string[] | Finding {
  const phases = phasesWithPapers(plan, papers);
  const phase = phases.find((each) => each.id === id);
  if (phase) return phase.names;
  const { what, remedy } = words.words.noPhase;
  return {
    where,
    what: say(what, { id }),
    remedy: say(remedy, { phases: phases.map((each) => each.id).join(', ') }),
  };
}
