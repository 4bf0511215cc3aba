import { cuttingOf } from '../../block/cutting.js';
import type { Grid } from '../../board/grid.js';
import type { Finding } from '../../job/finding.js';
import type { Job } from '../../job/job.js';
import { readJob } from '../../job/read.js';
import type { Reading } from '../../job/reading.js';
import type { Layup } from '../../layup/layup.js';
import { planOf, type Plan } from '../../plan.js';
import { resultOf, type Result } from '../../result.js';

/** A job's text and the tables beside it. */
export interface Written {
  readonly name: string;
  readonly text: string;
  readonly beside: Readonly<Record<string, string>>;
}

/** What the page asks of the worker. `which` tells the job on the bench from the one it is compared with, and from what is asked for practice. */
export interface Question {
  readonly number: number;
  readonly which: 'this' | 'other' | 'practice';
  readonly written: Written;
}

/** What the page draws: the published plan, and what a picture needs beside it. */
export interface Shown {
  readonly result: Result;
  readonly job: Job;
  readonly layup: Layup;
  readonly grid: Grid;
}

export interface Answer {
  readonly number: number;
  readonly which: Question['which'];
  readonly findings: readonly Finding[];
  /** Absent where the job has errors. The grid is absent where the board is the one of the last answer. */
  readonly shown?: Omit<Shown, 'grid'> & { readonly grid?: Grid };
  /** How long reading and planning took, ms. */
  readonly took: number;
}

/** What takes too long to be waited for at every step of a slider, found in the pause after the answer to a question. */
export interface Counted {
  readonly counted: Question['number'];
  /** Sheets of the shop's foam that the blocks are cut from, and blocks that no sheet is left for; absent where the job lists no sheets. */
  readonly sheets?: { readonly cut: number; readonly leftOut: number };
}

export function countedFor(number: Question['number'], plan: Plan): Counted {
  const { sheets } = cuttingOf(plan);
  return { counted: number, ...(sheets && { sheets: { cut: sheets.sheets.length, leftOut: sheets.leftOut.length } }) };
}

/** What was read and planned last of each job, so that a board is made, and crosses over to the page, once. */
export type Known = Map<Question['which'], { readonly reading?: Reading; readonly plan?: Plan }>;

/** Reads and plans: the same two functions as on the command line. */
export function answerTo({ number, which, written }: Question, known: Known): Answer {
  const begin = performance.now();
  const before = (which !== 'other' && known.get('practice')) || known.get(which === 'other' ? which : 'this');
  const { job, findings, reading } = readJob(
    written.text,
    written.name,
    (name) => written.beside[name],
    before?.reading,
  );
  const plan = job ? planOf(job, before?.plan) : undefined;
  if (which === 'this') known.delete('practice');
  known.set(which, { ...before, ...(reading && { reading }), ...(plan && { plan }) });
  if (!plan) return { number, which, findings, took: performance.now() - begin };
  return {
    number,
    which,
    findings,
    shown: shownOf(plan, plan.board !== before?.plan?.board),
    took: performance.now() - begin,
  };
}

function shownOf(plan: Plan, withGrid: boolean): Answer['shown'] {
  return { result: resultOf(plan), job: plan.job, layup: plan.layup, ...(withGrid && { grid: plan.board.grid }) };
}
