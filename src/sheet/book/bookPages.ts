import table from '../../../templates/phases.json' with { type: 'json' };
import { phasesOf, type Line, type Phase } from '../../book/phases.js';
import { NOTHING_KNOWN, standingsOf, type Progress, type Standing } from '../../book/standing.js';
import type { Plan } from '../../plan.js';
import { say, WORDS } from '../../words/say.js';
import { cuttingOnce } from '../cutting/cuttingOnce.js';
import { sheetsInWords } from '../cutting/cutPages.js';
import { stationsOf, type StationMeant } from '../../book/stations.js';
import type { Units } from '../../length/units.js';
import { printLength } from '../../length/length.js';
import { cautionsOf } from '../cautions.js';
import type { Cell, TextBlock, TextPage } from '../pages.js';
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
 * @param progress what was ticked so far
 * @param only the name of the phase
 */
export function bookPages(plan: Plan, called: Called, progress: Progress = NOTHING_KNOWN, only?: string): TextPage[] {
  const phases = phasesOnce(plan);
  const pageOf = (phase: Phase) => phasePage(phase, plan, called, progress);
  if (only !== undefined) return phases.filter(({ id }) => id === only).map(pageOf);
  return [overview(phases, progress, plan.job.units), shoppingPage(plan), ...phases.map(pageOf)];
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

function overview(phases: readonly Phase[], progress: Progress, units: Units): TextPage {
  const { intro, ticks, write, written, writeColumns, examples, line, finished } = words.overview;
  const standings = standingsOf(phases, progress);
  const is = (state: Standing['state']) => phases.filter(({ id }) => standings.get(id)!.state === state);
  const [now] = is('now');
  return {
    kind: 'text',
    title: words.title,
    isTight: true,
    blocks: [
      {
        kind: 'paragraph',
        text: say(intro, { done: is('done').length, count: phases.length, now: now ? titleOf(now) : finished }),
      },
      { kind: 'paragraph', text: ticks },
      {
        kind: 'pages',
        missing: words.missing,
        entries: phases.map((phase) => ({
          name: say(line, { number: phase.number, name: phase.name, id: phase.id }),
          note: sayStanding(standings.get(phase.id)!),
          document: titleOf(phase),
        })),
      },
      { kind: 'paragraph', text: write },
      {
        kind: 'table',
        columns: columnsOf([writeColumns.what, 'text'], [writeColumns.how, 'text']),
        rows: written.map((cells) => row(...cells.map((cell) => say(cell, examples[units])))),
      },
    ],
  };
}

/** Where a phase stands, in a word or two. */
export function sayStanding(standing: Standing): string {
  const { waiting, ...states } = words.overview;
  if (standing.state !== 'waiting') return states[standing.state];
  return say(waiting, { numbers: standing.waitsFor.join(WORDS.joinWith) });
}

function phasePage(phase: Phase, plan: Plan, called: Called, { isTicked }: Progress): TextPage {
  const { ready, steps, papers, rest, ahead, columns } = words.phase;
  const ticked = (title: string, lines: readonly Line[], tick: string): TextBlock => ({
    kind: 'table',
    columns: columnsOf(['', 'number'], [title, 'text'], [tick, 'tick']),
    rows: lines.map(({ id, text }, i) => row(i + 1, text, isTicked(phase.id, id))),
  });
  const its = phase.papers.flatMap((kind) => {
    const its = called(kind as PaperKind);
    return its ? [{ name: its.name, document: kind, ...(its.where !== 'toPrint' && { note: words[its.where] }) }] : [];
  });
  return {
    kind: 'text',
    title: titleOf(phase),
    isTight: true,
    blocks: [
      ticked(ready, phase.ready, columns.there),
      cautionsOf(phase.cautions),
      ticked(steps, phase.steps, columns.done),
      ...(its.length > 0
        ? [{ kind: 'pages', title: papers, missing: words.missing, entries: its, isDense: true } as const]
        : []),
      ...(phase.measures.length > 0
        ? [
            {
              kind: 'table',
              columns: columnsOf(
                [columns.what, 'text'],
                [columns.meant, 'text'],
                [columns.found, 'text'],
                [columns.where, 'text'],
              ),
              rows: phase.measures.map(({ what, meant, write, room }) => row(what, meant, blanks(room), write)),
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
      ...(phase.isByStation ? stationBlocks(plan) : []),
    ],
  };
}

/** What is measured station by station: meant, and room for what was found. */
function stationBlocks(plan: Plan): TextBlock[] {
  const { title, note, columns: of } = words.stations;
  const length = (mm: number): Cell => ({ value: mm, text: printLength(mm, plan.job.units) });
  const stations = stationsOf(plan);
  const isAlike = stations.every(({ left, right }) => Math.abs(left - right) < ALIKE);
  const beside = ({ left, right }: StationMeant): Cell =>
    isAlike ? length(right) : [left, right].map((mm) => printLength(mm, plan.job.units)).join(WORDS.joinWith);
  return [
    { kind: 'heading', text: title },
    { kind: 'paragraph', text: note },
    {
      kind: 'table',
      columns: columnsOf(
        [of.at, 'number'],
        [of.thickness, 'number'],
        [of.found, 'text'],
        [of.side, 'number'],
        [of.beside, 'number'],
        [of.left, 'text'],
        [of.right, 'text'],
        [of.width, 'number'],
        [of.found, 'text'],
      ),
      rows: stations.map((station) =>
        row(
          length(station.x),
          length(station.thickness),
          TALL,
          length(station.side),
          beside(station),
          BLANK,
          BLANK,
          length(station.width),
          BLANK,
        ),
      ),
    },
  ];
}

/** Thicknesses on either side that differ by less are told as one, mm. */
const ALIKE = 0.5;

/** Keeps room for what is written by hand; in long lists over two lines. */
const BLANK = '\u00a0'.repeat(12);
/** A blank for each number, a line each. */
const blanks = (room: readonly string[] = ['']): string => room.map((label) => `${label} ${BLANK}`).join('\n');
const TALL = `${BLANK}\n`;
