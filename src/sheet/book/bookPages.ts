import table from '../../../templates/phases.json' with { type: 'json' };
import { phasesOf, type Phase } from '../../book/phases.js';
import type { Plan } from '../../plan.js';
import { say } from '../../words/say.js';
import { cuttingOnce } from '../cutting/cuttingOnce.js';
import { sheetsInWords } from '../cutting/cutPages.js';
import { printLength } from '../../length/length.js';
import { cautionsOf } from '../cautions.js';
import type { TextBlock, TextPage } from '../pages.js';
import { columnsOf, row } from '../table.js';
import type { PaperKind } from '../uses.js';
import { shoppingPage } from './shoppingPage.js';

const { words } = table;

/** What a kind of paper is called and where it is, where the board has papers of it. */
export type Called = (
  kind: PaperKind,
) => { readonly name: string; readonly where: 'toPrint' | 'toLookAt' | 'leftOut' } | undefined;

/**
 * The build book: all phases at a glance, the shopping list, then each phase; or one phase alone.
 *
 * @param only the name of the phase
 */
export function bookPages(plan: Plan, called: Called, only?: string): TextPage[] {
  const phases = phasesOnce(plan);
  if (only !== undefined) return phases.filter(({ id }) => id === only).map((phase) => phasePage(phase, called));
  return [overview(phases), shoppingPage(plan), ...phases.map((phase) => phasePage(phase, called))];
}

/** The phases of a plan, with what is found by a search. */
export function phasesOnce(plan: Plan): Phase[] {
  const { sheets, glue } = cuttingOnce(plan);
  const print = (mm: number) => printLength(mm, plan.job.units);
  return phasesOf(plan, {
    ...(sheets && { sheets: sheetsInWords(sheets.sheets, print) }),
    batches: glue.batches.length,
    clamps: glue.clamps,
    blockGlue: glue.glue,
  });
}

/** A phase as its page is called: `9 Routing`. */
export const titleOf = ({ number, name }: Phase): string => say(words.phase.title, { number, name });

function overview(phases: readonly Phase[]): TextPage {
  const { heading, intro, ticks, write, line, ...states } = words.overview;
  const now = phases.find(({ state }) => state === 'now');
  const done = phases.filter(({ state }) => state === 'done').length;
  return {
    kind: 'text',
    title: words.title,
    blocks: [
      { kind: 'heading', text: heading },
      {
        kind: 'paragraph',
        text: say(intro, { done, count: phases.length, now: now ? titleOf(now) : states.finished }),
      },
      { kind: 'paragraph', text: ticks },
      { kind: 'paragraph', text: write },
      {
        kind: 'pages',
        missing: words.missing,
        entries: phases.map((phase) => ({
          name: say(line, { number: phase.number, name: phase.name, id: phase.id }),
          ...(phase.state !== 'ahead' && { note: states[phase.state] }),
          document: titleOf(phase),
        })),
      },
    ],
  };
}

function phasePage(phase: Phase, called: Called): TextPage {
  const { ready, steps, papers, measure, rest, ahead, columns } = words.phase;
  const heading = (text: string): TextBlock => ({ kind: 'heading', text });
  const ticked = (title: string, lines: readonly string[], tick: string): TextBlock => ({
    kind: 'table',
    columns: columnsOf(['', 'number'], [title, 'text'], [tick, 'tick']),
    rows: lines.map((line, i) => row(i + 1, line, false)),
  });
  const its = phase.papers.flatMap((kind) => {
    const its = called(kind as PaperKind);
    return its ? [{ name: its.name, document: kind, ...(its.where !== 'toPrint' && { note: words[its.where] }) }] : [];
  });
  return {
    kind: 'text',
    title: titleOf(phase),
    blocks: [
      ticked(ready, phase.ready, columns.there),
      ticked(steps, phase.steps, columns.done),
      ...(its.length > 0 ? [heading(papers), { kind: 'pages', missing: words.missing, entries: its } as const] : []),
      ...(phase.measures.length > 0
        ? [
            heading(measure),
            {
              kind: 'table',
              columns: columnsOf(
                [columns.what, 'text'],
                [columns.meant, 'text'],
                [columns.found, 'text'],
                [columns.where, 'text'],
              ),
              rows: phase.measures.map(({ what, meant, write }) => row(what, meant, BLANK, write)),
            } as const,
          ]
        : []),
      {
        kind: 'pairs',
        pairs: [
          ...(phase.rest === undefined ? [] : [[rest, phase.rest] as const]),
          ...(phase.ahead.length > 0 ? [[ahead, phase.ahead.join(' ')] as const] : []),
        ],
      },
      cautionsOf(phase.cautions),
    ],
  };
}

/** Keeps room for what is written by hand. */
const BLANK = '\u00a0'.repeat(14);
