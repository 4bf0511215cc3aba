import Papa from 'papaparse';
import { createHash } from 'node:crypto';
import { roundedAs } from '../../length/rounded.js';
import type { Units } from '../../length/units.js';
import { FIRST_TIME, type Happening } from '../log/event.js';
import { dayOrder, readDate, type DayOrder } from './listDate.js';
import { planMadeTo } from '../fit/refit.js';
import { saySizes } from '../report/trackReport.js';
import { stageOf, UNTOUCHED, type BlockState, type Mark, type ShopState } from '../log/state.js';
import { STEPS, type Step } from '../log/step.js';
import { blocksByRow, type TrackedBlock } from '../log/trackedBlock.js';

/** Something in a list that cannot be taken over: where, what, what to do. */
export interface ListFinding {
  /** As a spreadsheet numbers its lines, the heading being line 1; 0 for the whole file. */
  readonly line: number;
  readonly what: string;
}

/** Something a list says, with when, by whom and to which plan the block was made. */
export interface ListEntry {
  readonly what: Happening;
  /** ms; absent where the list does not say. */
  readonly at?: number;
  readonly who?: string;
  readonly plan: number;
}

export type ReadList =
  /** `differences`: what was not taken over, or not as it stands there. */
  | { readonly ok: true; readonly entries: readonly ListEntry[]; readonly differences: readonly string[] }
  | { readonly ok: false; readonly findings: readonly ListFinding[] };

/** What a tracker knows, for a list to be read into or written from. */
export interface ListOf {
  readonly job: string;
  /** Of today's plan, which is also the last of `plans`. */
  readonly blocks: readonly TrackedBlock[];
  readonly plans: readonly { readonly number: number; readonly blocks: readonly TrackedBlock[] }[];
  readonly state: ShopState;
  readonly units: Units;
}

const SIZES = ['length_mm', 'height_mm', 'thickness_mm'] as const;
const BY = '_by';
/**
 * What a line is of: the job, the tracker's number of the plan its sizes are from, and the day the list was written.
 */
const OF = ['job', 'plan', 'date'];
const COLUMNS = [
  'block',
  'row',
  'place',
  ...SIZES,
  ...STEPS,
  'notes',
  ...STEPS.map((step) => step + BY),
  'shape',
  ...OF,
];
const DONE = ['x', 'yes', 'y', 'done', '1', 'true', 'ok', '✓', '✔'];
/** How a cell begins that a spreadsheet would compute, or that carries our guard already. */
const GUARDED = /^[=+\-@\t\r']/;
const NOT_DONE = ['', 'no', 'n', '0', 'false', '-', 'open'];
/** What an entry may hold, letters. */
const MOST_NAME = 60;
const MOST_NOTE = 2000;
/** Sizes that a spreadsheet has shown with fewer places, mm. */
const SAME_SIZE = 0.11;
const DAY = 86_400_000;

/**
 * The tracking list as CSV (RFC 4180): a line for each block in the order it lies in the board, with the sizes it was
 * made to, for each step the time it was done (ISO 8601, UTC) and by whom, the notes, a mark of the shape it was made
 * to, by which the list finds its plan again, and of which job and day it is. Words that a spreadsheet would take for a
 * formula are marked with an apostrophe.
 *
 * @param now ms
 */
export function writeList({ job, blocks, plans, state, units }: ListOf, now: number): string {
  const lines = [...blocksByRow(blocks).values()].flat().map((block) => {
    const its = state.blocks.get(block.id) ?? UNTOUCHED;
    const plan = planMadeTo(its);
    const made = plans.find(({ number }) => number === plan)?.blocks.find(({ id }) => id === block.id) ?? block;
    const { length, height, thickness } = made.sizes;
    const size = (mm: number) => String(roundedAs('block', mm, units));
    return [
      block.id,
      block.row,
      String(block.place),
      size(length),
      size(height),
      size(thickness),
      ...STEPS.map((step) => doneAt(its, step)),
      its.notes.map(({ text }) => text).join('\n'),
      ...STEPS.map((step) => firstMark(its, step)?.who ?? ''),
      shapeMark(made),
      job,
      String(plans.find(({ blocks: its }) => its.includes(made))?.number ?? ''),
      new Date(now).toISOString().slice(0, 10),
    ];
  });
  return Papa.unparse({ fields: COLUMNS, data: lines }, { escapeFormulae: GUARDED, newline: '\r\n' }) + '\r\n';
}

/**
 * Reads a tracking list back, from this tool or from a spreadsheet (whatever separates the columns there, however it
 * writes dates). It only adds: a step done in the list and not here, a note not yet here. What is done here and not in
 * the list stays done and is named in `differences`, like everything else that is not taken over. Where anything is
 * unclear, nothing is.
 *
 * @param now ms; nothing in a list was done later
 */
export function readList(text: string, { job, blocks, plans, state, units }: ListOf, now: number): ReadList {
  const { separator, rest } = withoutSeparatorLine(text.replace(/^\uFEFF/, ''));
  const { data, meta, errors } = Papa.parse<Record<string, string>>(rest, {
    header: true,
    transformHeader: columnOf,
    ...(separator !== undefined && { delimiter: separator }),
  });
  const fields = meta.fields ?? [];
  const missing = ['block', ...STEPS].filter((column) => !fields.includes(column));
  if (missing.length > 0) {
    const what = `The first line must name the columns. Missing: ${missing.join(', ')}. Needed: block, ${STEPS.join(', ')}; notes if any.`;
    return { ok: false, findings: [{ line: 1, what }] };
  }
  const byName = new Map(
    [...plans.flatMap((plan) => plan.blocks), ...blocks].map((one) => [one.id.toLowerCase(), one.id]),
  );
  const seen = new Map<string, number>();
  const findings: ListFinding[] = errors.flatMap(({ type, code, row }) =>
    type === 'Quotes'
      ? [{ line: (row ?? 0) + 2, what: 'A quotation mark is not closed. Save the list as CSV again.' }]
      : code === 'TooManyFields'
        ? [
            {
              line: (row ?? 0) + 2,
              what: 'This line has more columns than the first. Put words with the separator in them in quotation marks.',
            },
          ]
        : [],
  );
  const entries: ListEntry[] = [];
  const odd = fields.filter((field) => field !== '' && !COLUMNS.includes(field));
  const differences = odd.length > 0 ? [`Columns that were not read: ${odd.join(', ')}.`] : [];
  const order = dayOrder(data.flatMap((record) => STEPS.map((step) => unguarded(record[step] ?? ''))));
  const others = new Set(
    data.map((record) => unguarded(record.job ?? '').trim()).filter((name) => name !== '' && name !== job),
  );
  if (others.size > 0)
    differences.push(`The list is of another job: ${[...others].join(', ')}. This tracker is of ${job}.`);
  let withoutSizes = 0;
  for (const [index, record] of data.entries()) {
    const line = index + 2;
    if (Object.values(record).every((cell) => String(cell).trim() === '')) continue;
    const find = (what: string) => void findings.push({ line, what });
    const cell = (column: string) => unguarded(record[column] ?? '').trim();
    const id = byName.get(cell('block').toLowerCase());
    if (id === undefined) {
      find(`Block “${cell('block')}” is not in the plan. Block numbers look like ${blocks[0]?.id ?? 'R2-07'}.`);
      continue;
    }
    const before = seen.get(id);
    if (before !== undefined) find(`Block ${id} stands in line ${before} already. Keep one of the two.`);
    seen.set(id, line);
    const its = state.blocks.get(id) ?? UNTOUCHED;
    const steps: Omit<ListEntry, 'plan'>[] = [];
    for (const step of [...STEPS].reverse()) {
      const said = saidIn(cell(step), order, now);
      const who = cell(step + BY) || (typeof said === 'object' ? said.who : '');
      const here = doneAt(its, step) !== '';
      if (typeof said === 'string') find(`${id}, ${step}: “${record[step]}” ${said}`);
      else if (who.length > MOST_NAME) find(`${id}, ${step}: a name has at most ${MOST_NAME} letters.`);
      else if (said && !here) {
        // What a later step says was done was done no later.
        const at = said.at ?? steps.at(-1)?.at;
        steps.push({
          what: { kind: 'step', block: id, step, done: true },
          ...(at !== undefined && { at }),
          ...(who !== '' && { who }),
        });
      } else if (!said && here) differences.push(`${id}: ${step} here, open in the list. It stays ${step}.`);
    }
    const notes = notesIn(record.notes ?? '').filter(
      (note) => !its.notes.some((one) => one.text.split('\n').includes(note)),
    );
    if (notes.some((note) => note.length > MOST_NOTE))
      find(`${id}: a note has at most ${MOST_NOTE} letters. Split it.`);
    const today = plans.at(-1)?.number ?? 0;
    entries.push(...notes.map((note): ListEntry => ({ what: { kind: 'note', block: id, text: note }, plan: today })));
    if (steps.length === 0) continue;
    const made = planOfLine(id, cell, plans, units);
    const here = planMadeTo(its);
    if (made === 'no sizes') withoutSizes++;
    if (typeof made === 'object') find(made.why);
    else if (
      here !== undefined &&
      shapeIn(plans, here, id) !== shapeIn(plans, made === 'no sizes' ? today : made, id)
    ) {
      differences.push(
        `${id}: made to other sizes here than in the list, so its steps are not taken over: ${steps
          .map(({ what }) => what.kind === 'step' && what.step)
          .reverse()
          .join(', ')}.`,
      );
    } else
      entries.push(...steps.reverse().map((one): ListEntry => ({ ...one, plan: made === 'no sizes' ? today : made })));
  }
  if (withoutSizes > 0)
    differences.push(
      `The list has no sizes for ${withoutSizes} of its blocks; they are taken as made to the plan of today.`,
    );
  if (seen.size === 0 && findings.length === 0) findings.push({ line: 0, what: 'The list has no lines.' });
  return findings.length > 0 ? { ok: false, findings } : { ok: true, entries, differences };
}

/** Number of the newest plan that has the block as the list says it was made. */
function planOfLine(
  id: string,
  cell: (column: string) => string,
  plans: ListOf['plans'],
  units: Units,
): number | 'no sizes' | { readonly why: string } {
  const sizes = SIZES.map((column) => Number(cell(column).replace(',', '.')));
  const hasSizes = SIZES.every((column) => cell(column) !== '') && sizes.every(Number.isFinite);
  const shape = cell('shape');
  if (shape === '' && !hasSizes) return 'no sizes';
  const fitting = plans.findLast(({ blocks }) => {
    const block = blocks.find((one) => one.id === id);
    if (!block) return false;
    if (shape !== '') return shapeMark(block) === shape;
    const { length, height, thickness } = block.sizes;
    return [length, height, thickness].every(
      (mm, i) => Math.abs(roundedAs('block', mm, units) - sizes[i]!) <= SAME_SIZE,
    );
  });
  if (fitting) return fitting.number;
  const [length, height, thickness] = sizes as [number, number, number];
  const said = hasSizes ? ` (${saySizes({ length, height, thickness }, units)})` : '';
  return {
    why: `${id} was made to a plan that this tracker does not know${said}. Run track once with the job as it was then, then import again.`,
  };
}

function shapeIn(plans: ListOf['plans'], plan: number, id: string): string | undefined {
  const block = plans.find(({ number }) => number === plan)?.blocks.find((one) => one.id === id);
  return block && shapeMark(block);
}

/** A mark that two blocks share when they are cut alike from one foam: twelve hexadecimal digits. */
function shapeMark({ made, outline, sizes }: TrackedBlock): string {
  const { outline: edge, thickness, foam } = made ?? { outline, thickness: sizes.thickness, foam: undefined };
  const written = JSON.stringify([
    edge.map((point) => point.map((mm) => mm.toFixed(2))),
    thickness.toFixed(2),
    foam?.name,
    foam?.density,
  ]);
  return createHash('sha256').update(written).digest('hex').slice(0, 12);
}

/** `sep=;` in a line of its own, as some spreadsheets begin a list. */
function withoutSeparatorLine(text: string): { readonly separator?: string; readonly rest: string } {
  const [line, separator] = /^"?sep=(.)"?\r?\n/i.exec(text) ?? [];
  return line === undefined ? { rest: text } : { separator: separator!, rest: text.slice(line.length) };
}

/** `Dry fitted ` and `DRY_FITTED` are `dry-fitted`. */
function columnOf(heading: string): string {
  const plain = heading.trim().toLowerCase();
  const alike = (name: string) => name.replace(/[\s_-]+/g, '');
  return COLUMNS.find((column) => alike(column) === alike(plain)) ?? plain;
}

function firstMark(block: BlockState, step: Step): Mark | undefined {
  return (block.marks[step] ?? []).reduce<Mark | undefined>(
    (a, b) => (a && a.happened <= b.happened ? a : b),
    undefined,
  );
}

/** When a step was first done, or `yes` where a later step says that it was, or nothing. */
function doneAt(block: BlockState, step: Step): string {
  const first = firstMark(block, step);
  if (first) return new Date(first.happened).toISOString();
  const stage = stageOf(block);
  return stage !== undefined && STEPS.indexOf(stage) > STEPS.indexOf(step) ? 'yes' : '';
}

/** What a cell says: done, with when and by whom as far as it tells; open; or in words what is unclear. */
function saidIn(
  cell: string,
  order: DayOrder,
  now: number,
): { readonly at?: number; readonly who: string } | undefined | string {
  const word = cell.toLowerCase();
  if (NOT_DONE.includes(word)) return undefined;
  if (DONE.includes(word)) return { who: '' };
  const date = readDate(cell, order);
  if (!date) return 'is neither done nor open. Write x or a date for done, nothing for open.';
  if (date.kind === 'either way') return 'can be read in two ways. Write the year first: 2026-03-14.';
  if (date.kind === 'none such') return 'is no day of the calendar. Write the year first: 2026-03-14.';
  if (date.at > now + DAY) return 'is in the future.';
  if (date.at < FIRST_TIME) return 'lies before the year 2000.';
  return { at: Math.min(date.at, now), who: date.rest };
}

function notesIn(cell: string): readonly string[] {
  return unguarded(cell)
    .split(/\r?\n/)
    .map((note) => note.replace(/\p{Cc}/gu, ' ').trim())
    .filter((note) => note !== '');
}

/** Takes off the apostrophe that kept a cell from being a formula. */
function unguarded(cell: string): string {
  return cell.startsWith("'") && GUARDED.test(cell.slice(1)) ? cell.slice(1) : cell;
}
