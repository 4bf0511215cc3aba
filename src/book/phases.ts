import table from '../../templates/phases.json' with { type: 'json' };
import type { Plan } from '../plan.js';
import { say } from '../words/say.js';
import { factsOf, thereOf, type Found, type There } from './facts.js';
import { furthest } from './furthest.js';

/** A phase of the work as it is for one board: what it has not is left out of it. */
export interface Phase {
  /** What it is called by at a terminal: `routing`. */
  readonly id: string;
  /** Counted from 1, of those that this board has. */
  readonly number: number;
  readonly name: string;
  readonly state: 'done' | 'now' | 'ahead';
  readonly ready: readonly string[];
  readonly steps: readonly string[];
  /** Kinds of papers that belong to it. */
  readonly papers: readonly string[];
  readonly measures: readonly Measure[];
  /** Names of cautions. */
  readonly cautions: readonly string[];
  readonly rest?: string;
  readonly ahead: readonly string[];
}

/** Something to measure, what it is meant to be, and where it goes. */
export interface Measure {
  readonly what: string;
  readonly meant: string;
  /** Of the job: `shaped[].thickness`; `tracker` where it goes there. */
  readonly key: string;
  readonly write: string;
}

type Line = string | { readonly if: string; readonly say: string };
interface Entry {
  readonly id: string;
  readonly name: string;
  readonly if?: string;
  readonly ready: readonly Line[];
  readonly steps: readonly Line[];
  readonly papers: readonly string[];
  readonly measure: readonly (Measure & { readonly if?: string })[];
  readonly cautions: readonly Line[];
  readonly rest?: string;
  readonly ahead: readonly Line[];
}

const entries = table.phases as readonly Entry[];

/** The phases that a board has, in the order of the work, with its numbers. */
export function phasesOf(plan: Plan, found: Found): Phase[] {
  const there = thereOf(plan);
  const facts = factsOf(plan, found);
  const has = entries.filter((entry) => holds(entry.if, there));
  const done = furthest(
    plan,
    has.map(({ id }) => id),
  );
  const said = (lines: readonly Line[]) =>
    lines.flatMap((line) => {
      if (typeof line === 'string') return [say(line, facts)];
      return holds(line.if, there) ? [say(line.say, facts)] : [];
    });
  return has.map((entry, i): Phase => ({
    id: entry.id,
    number: i + 1,
    name: entry.name,
    state: i < done ? 'done' : i === done ? 'now' : 'ahead',
    ready: said(entry.ready),
    steps: said(entry.steps),
    papers: entry.papers,
    measures: entry.measure
      .filter((measure) => holds(measure.if, there))
      .map(({ what, meant, key, write }) => ({ what, meant: say(meant, facts), key, write })),
    cautions: said(entry.cautions),
    ...(entry.rest !== undefined && { rest: say(entry.rest, facts) }),
    ahead: said(entry.ahead),
  }));
}

/** Kinds of papers in the order of the phases that they belong to first. */
export const paperOrder: readonly string[] = [...new Set(entries.flatMap(({ papers }) => papers))];

/** Names of all phases there can be. */
export const phaseNames: readonly string[] = entries.map(({ id }) => id);

function holds(condition: string | undefined, there: There): boolean {
  if (condition === undefined) return true;
  const isNot = condition.startsWith('!');
  const name = isNot ? condition.slice(1) : condition;
  if (!(name in there)) throw new Error(`templates/phases.json asks for "${name}", which no plan knows`);
  return there[name] !== isNot;
}
