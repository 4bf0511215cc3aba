import { cuttingOf } from '../../block/cut/cutting.js';
import type { Mesh } from '../../board/mesh.js';
import type { JobFinding } from '../../job/finding.js';
import type { Job } from '../../job/job.js';
import { readJob } from '../../job/whole/read.js';
import type { Reading } from '../../job/text/reading.js';
import { besideIn, type Beside } from '../../job/beside.js';
import type { Layup } from '../../layup/layup.js';
import { planOf, type Plan } from '../../plan.js';
import { resultOf, type Result } from '../../view/result.js';
import { fitViewOf, type FitView } from '../../view/fitView.js';
import { outlineInPlan, type OutlineInPlan } from '../../view/outlineInPlan.js';

/** A job's text and the tables beside it. */
export interface JobText {
  readonly name: string;
  readonly text: string;
  readonly beside: Readonly<Record<string, Beside>>;
}

/**
 * What the page asks of the worker. `which` tells the job on the bench from the one it is compared with, and from what
 * is asked of the one on the bench for practice, or ahead: because it will probably be asked next.
 */
export interface Question {
  readonly number: number;
  readonly which: 'this' | 'other' | 'practice' | 'ahead';
  readonly written: JobText;
}

/** What the page draws: the published plan, and what a picture needs beside it. */
export interface Shown {
  readonly result: Result;
  readonly job: Job;
  readonly layup: Layup;
  readonly board: ShownBoard;
  /** The board in its moulded blank, where there is one. */
  readonly fit?: FitView;
}

/** The finished board as pictures need it: its surface, and its outline from above. */
export interface ShownBoard {
  readonly mesh: Pick<Mesh, 'positions' | 'triangles' | 'patches'>;
  readonly outline: OutlineInPlan;
}

export interface Answer {
  readonly number: number;
  readonly which: Question['which'];
  readonly findings: readonly JobFinding[];
  /** Absent where the job has errors. Its board is absent where it is the one of the last answer. */
  readonly shown?: Omit<Shown, 'board'> & { readonly board?: ShownBoard };
  /** How long reading and planning took, ms. */
  readonly took: number;
}

/**
 * What takes too long to be waited for at every step of a slider, found in the pause after the answer to a question.
 */
export interface Counted {
  readonly counted: Question['number'];
  /**
   * Sheets of the shop's foam that the blocks are cut from, and blocks that no sheet is left for; absent where the job
   * lists no sheets.
   */
  readonly sheets?: { readonly cut: number; readonly leftOut: number };
}

export function countedFor(number: Question['number'], plan: Plan): Counted {
  const { sheets } = cuttingOf(plan);
  return { counted: number, ...(sheets && { sheets: { cut: sheets.sheets.length, leftOut: sheets.leftOut.length } }) };
}

/** What was read and planned last for a question. */
interface Last {
  readonly written: JobText;
  readonly answer: Answer;
  readonly reading?: Reading;
  readonly plan?: Plan;
}

/**
 * What was read and planned last: what is on the page, so that a board crosses over to it once; the job it is compared
 * with; and the latest of the job on the bench, whatever it was asked for, over which the next is made.
 */
export interface Known {
  onPage?: Last;
  other?: Last;
  latest?: Last;
}

/**
 * Reads and plans: the same two functions as on the command line. What was asked ahead is answered at once when it is
 * asked.
 */
export function answerTo(question: Question, known: Known): Answer {
  const { number, which, written } = question;
  if (which === 'other') return (known.other = planned(question, known.other, known.other)).answer;
  const { latest } = known;
  const isHere = which === 'this' && latest !== known.onPage && latest && isSame(latest.written, written);
  const last = isHere
    ? { ...latest, answer: { ...latest.answer, number, which } }
    : planned(question, known.onPage, latest);
  known.latest = last;
  if (which === 'this') known.onPage = last;
  return last.answer;
}

/**
 * @param onPage what the page has, or would have had
 * @param before what it is made over
 */
function planned({ number, which, written }: Question, onPage: Last | undefined, before: Last | undefined): Last {
  const begin = performance.now();
  const { job, findings, reading } = readJob(written.text, written.name, besideIn(written.beside), before?.reading);
  const plan = job ? planOf(job, before?.plan) : undefined;
  const shown = plan && shownOf(plan, plan.board !== onPage?.plan?.board);
  return {
    ...onPage,
    written,
    answer: { number, which, findings, ...(shown && { shown }), took: performance.now() - begin },
    ...(reading && { reading }),
    ...(plan && { plan }),
  };
}

function isSame(a: JobText, b: JobText): boolean {
  return a.text === b.text && a.name === b.name && JSON.stringify(a.beside) === JSON.stringify(b.beside);
}

/** A job as the page needs it: the triangles of a scan stay with the worker. */
function withoutTriangles(job: Job): Job {
  const { scan, ...board } = job.board;
  const { shaped, ...rest } = job;
  return scan || shaped?.some(({ kind }) => kind === 'scan') ? { ...rest, board } : job;
}

function shownOf(plan: Plan, withBoard: boolean): Answer['shown'] {
  const { job, layup } = plan;
  const fit = fitViewOf(plan);
  return {
    result: resultOf(plan),
    job: withoutTriangles(job),
    layup,
    ...(fit && { fit }),
    ...(withBoard && { board: shownBoard(plan) }),
  };
}

function shownBoard({ board }: Plan): ShownBoard {
  const { positions, triangles, patches } = board.mesh;
  return { mesh: { positions, triangles, patches }, outline: outlineInPlan(board, { from: 0, to: board.length }) };
}
