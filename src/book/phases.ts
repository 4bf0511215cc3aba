import table from '../../templates/phases.json' with { type: 'json' };
import type { Asks } from '../measured/asks.js';
import type { Plan } from '../plan.js';
import { say } from '../words/say.js';
import { factsOf, thereOf, type Found, type There } from './facts.js';
import { reachedIn } from './reached.js';

/** A phase of the work as it is for one board: what it has not is left out of it. */
export interface Phase {
  /** What it is called by at a terminal: `routing`. */
  readonly id: string;
  /** Counted from 1, of those that this board has. */
  readonly number: number;
  readonly name: string;
  /** The phases of this board that must be done before it, by their names. */
  readonly after: readonly string[];
  /** Whether the job holds what is written down at its end. */
  readonly isReached: boolean;
  readonly ready: readonly Line[];
  readonly steps: readonly Line[];
  /** Kinds of papers that belong to it. */
  readonly papers: readonly string[];
  readonly measures: readonly Measure[];
  /** Whether thickness and width are measured station by station. */
  readonly isByStation: boolean;
  /** Names of cautions. */
  readonly cautions: readonly string[];
  readonly rest?: string;
  readonly ahead: readonly string[];
}

/** Something to see to or to do, to be ticked. */
export interface Line {
  /** Keeps its meaning whatever the sentence says; no two of a phase have the same. */
  readonly id: string;
  readonly text: string;
}

/** Something to measure, what it is meant to be, and where it goes. */
export interface Measure {
  readonly what: string;
  readonly meant: string;
  /** Of the job: `shaped[].thickness`; `tracker` where it goes there. */
  readonly key: string;
  readonly write: string;
  /** What stands before each of several blanks, where more than one number is written down. */
  readonly room?: readonly string[];
  /** What the tracker asks for; absent where it goes nowhere by a number alone. */
  readonly asks?: Asks;
}

type Sentence = string | { readonly if: string; readonly say: string };
interface LineEntry {
  readonly id: string;
  readonly if?: string;
  readonly say: string;
}
interface Entry {
  readonly id: string;
  readonly name: string;
  readonly if?: string;
  readonly after: readonly string[];
  readonly ready: readonly LineEntry[];
  readonly steps: readonly LineEntry[];
  readonly papers: readonly string[];
  readonly measure: readonly (Measure & { readonly if?: string })[];
  readonly stations?: boolean;
  readonly cautions: readonly Sentence[];
  readonly rest?: string;
  readonly ahead: readonly Sentence[];
}

const entries = table.phases as readonly Entry[];

/** The phases that a board has, in the order of the work, with its numbers. */
export function phasesOf(plan: Plan, found: Found): Phase[] {
  const there = thereOf(plan);
  const facts = factsOf(plan, found);
  const has = entries.filter((entry) => holds(entry.if, there));
  const reached = reachedIn(plan);
  const lines = (of: readonly LineEntry[]) =>
    of.filter((line) => holds(line.if, there)).map((line): Line => ({ id: line.id, text: say(line.say, facts) }));
  const said = (lines: readonly Sentence[]) =>
    lines.flatMap((line) => {
      if (typeof line === 'string') return [say(line, facts)];
      return holds(line.if, there) ? [say(line.say, facts)] : [];
    });
  return has.map((entry, i): Phase => ({
    id: entry.id,
    number: i + 1,
    name: entry.name,
    after: beforeIn(has, entry),
    isReached: reached.has(entry.id),
    ready: lines(entry.ready),
    steps: lines(entry.steps),
    papers: entry.papers,
    measures: entry.measure
      .filter((measure) => holds(measure.if, there))
      .map(({ what, meant, key, write, room, asks }) => ({
        what,
        meant: say(meant, facts),
        key,
        write,
        ...(room && { room }),
        ...(asks && { asks }),
      })),
    isByStation: entry.stations ?? false,
    cautions: said(entry.cautions),
    ...(entry.rest !== undefined && { rest: say(entry.rest, facts) }),
    ahead: said(entry.ahead),
  }));
}

/** Kinds of papers in the order of the phases that they belong to first. */
export const paperOrder: readonly string[] = [...new Set(entries.flatMap(({ papers }) => papers))];

/** Names of all phases there can be. */
export const phaseNames: readonly string[] = entries.map(({ id }) => id);

/** Names of everything that can be ticked, by phase. */
export const lineNames: ReadonlyMap<string, ReadonlySet<string>> = new Map(
  entries.map(({ id, ready, steps }) => [id, new Set([...ready, ...steps].map((line) => line.id))]),
);

/** What comes before a phase; where a board has it not, what comes before that. */
function beforeIn(there: readonly Entry[], { after }: Entry): string[] {
  const found = after.flatMap((id) => {
    const entry = entries.find((each) => each.id === id)!;
    return there.includes(entry) ? [id] : beforeIn(there, entry);
  });
  return [...new Set(found)];
}

function holds(condition: string | undefined, there: There): boolean {
  if (condition === undefined) return true;
  const isNot = condition.startsWith('!');
  const name = isNot ? condition.slice(1) : condition;
  if (!(name in there)) throw new Error(`templates/phases.json asks for "${name}", which no plan knows`);
  return there[name] !== isNot;
}
