import words from '../../../templates/list.json' with { type: 'json' };
import Papa from 'papaparse';
import { createHash } from 'node:crypto';
import type { Finding, Place } from '../../finding/finding.js';
import { roundedAs } from '../../length/rounded.js';
import type { Units } from '../../length/units.js';
import { FIRST_TIME, MOST_NAME, MOST_NOTE, type Happening } from '../log/event.js';
import { dayOrder, readDate, type DayOrder } from './listDate.js';
import { planMadeTo } from '../fit/refit.js';
import { saySizes } from '../report/trackReport.js';
import { stageOf, UNTOUCHED, type BlockState, type Mark, type ShopState } from '../log/state.js';
import { STEPS, type Step } from '../log/step.js';
import { csvText, guarded, unguarded } from '../../csv/csvText.js';
import { say } from '../../words/say.js';
import { blocksByRow, type TrackedBlock } from '../log/trackedBlock.js';

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
  /** Lines as a spreadsheet numbers them, the heading being line 1; the path is the block, and its step. */
  | { readonly ok: false; readonly findings: readonly Finding<Place>[] };

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
const NOT_DONE = ['', 'no', 'n', '0', 'false', '-', 'open'];
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
  return csvText([COLUMNS, ...lines.map((line) => line.map(guarded))]);
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
    const values = { missing: missing.join(', '), steps: STEPS.join(', ') };
    return { ok: false, findings: [inList({ line: 1, path: '' }, words.columns, values)] };
  }
  const byName = new Map(
    [...plans.flatMap((plan) => plan.blocks), ...blocks].map((one) => [one.id.toLowerCase(), one.id]),
  );
  const seen = new Map<string, number>();
  const findings: Finding<Place>[] = errors.flatMap(({ type, code, row }) => {
    const sentence = type === 'Quotes' ? words.quote : code === 'TooManyFields' ? words.tooMany : undefined;
    return sentence ? [inList({ line: (row ?? 0) + 2, path: '' }, sentence)] : [];
  });
  const entries: ListEntry[] = [];
  const odd = fields.filter((field) => field !== '' && !COLUMNS.includes(field));
  const differences = odd.length > 0 ? [say(words.differs.columns, { columns: odd.join(', ') })] : [];
  const order = dayOrder(data.flatMap((record) => STEPS.map((step) => unguarded(record[step] ?? ''))));
  const others = new Set(
    data.map((record) => unguarded(record.job ?? '').trim()).filter((name) => name !== '' && name !== job),
  );
  if (others.size > 0) differences.push(say(words.differs.otherJob, { jobs: [...others].join(', '), job }));
  let withoutSizes = 0;
  for (const [index, record] of data.entries()) {
    const line = index + 2;
    if (Object.values(record).every((cell) => String(cell).trim() === '')) continue;
    const find = (path: string, sentence: Sentence, values?: Values) =>
      void findings.push(inList({ line, path }, sentence, values));
    const cell = (column: string) => unguarded(record[column] ?? '').trim();
    const id = byName.get(cell('block').toLowerCase());
    if (id === undefined) {
      find('', words.unknown, { block: cell('block'), like: blocks[0]?.id ?? 'R2-07' });
      continue;
    }
    const before = seen.get(id);
    if (before !== undefined) find(id, words.twice, { line: before });
    seen.set(id, line);
    const its = state.blocks.get(id) ?? UNTOUCHED;
    const steps: Omit<ListEntry, 'plan'>[] = [];
    for (const step of [...STEPS].reverse()) {
      const said = saidIn(cell(step), order, now);
      const who = cell(step + BY) || (typeof said === 'object' ? said.who : '');
      const here = doneAt(its, step) !== '';
      const place = `${id}, ${step}`;
      if (typeof said === 'string') find(place, words.cell[said], { cell: record[step] ?? '' });
      else if (who.length > MOST_NAME) find(place, words.longName, { most: MOST_NAME });
      else if (said && !here) {
        // What a later step says was done was done no later.
        const at = said.at ?? steps.at(-1)?.at;
        steps.push({
          what: { kind: 'step', block: id, step, done: true },
          ...(at !== undefined && { at }),
          ...(who !== '' && { who }),
        });
      } else if (!said && here) differences.push(say(words.differs.open, { block: id, step }));
    }
    const notes = notesIn(record.notes ?? '').filter(
      (note) => !its.notes.some((one) => one.text.split('\n').includes(note)),
    );
    if (notes.some((note) => note.length > MOST_NOTE)) find(id, words.longNote, { most: MOST_NOTE });
    const today = plans.at(-1)?.number ?? 0;
    entries.push(...notes.map((note): ListEntry => ({ what: { kind: 'note', block: id, text: note }, plan: today })));
    if (steps.length === 0) continue;
    const made = planOfLine(id, cell, plans, units);
    const here = planMadeTo(its);
    if (made === 'no sizes') withoutSizes++;
    if (typeof made === 'object') find(id, words.otherPlan, made);
    else if (
      here !== undefined &&
      shapeIn(plans, here, id) !== shapeIn(plans, made === 'no sizes' ? today : made, id)
    ) {
      differences.push(
        say(words.differs.otherSizes, {
          block: id,
          steps: steps
            .map(({ what }) => what.kind === 'step' && what.step)
            .reverse()
            .join(', '),
        }),
      );
    } else
      entries.push(...steps.reverse().map((one): ListEntry => ({ ...one, plan: made === 'no sizes' ? today : made })));
  }
  if (withoutSizes > 0) differences.push(say(words.differs.noSizes, { count: withoutSizes }));
  if (seen.size === 0 && findings.length === 0) findings.push(inList({ path: '' }, words.empty));
  return findings.length > 0 ? { ok: false, findings } : { ok: true, entries, differences };
}

type Sentence = { readonly what: string; readonly remedy: string };
type Values = Readonly<Record<string, string | number>>;

const inList = (where: Place, { what, remedy }: Sentence, values: Values = {}): Finding<Place> => ({
  where,
  what: say(what, values),
  remedy: say(remedy, values),
});

/**
 * Number of the newest plan that has the block as the list says it was made; or, where none has, the sizes it says in
 * words.
 */
function planOfLine(
  id: string,
  cell: (column: string) => string,
  plans: ListOf['plans'],
  units: Units,
): number | 'no sizes' | { readonly sizes: string } {
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
  return { sizes: hasSizes ? say(words.sizes, { sizes: saySizes({ length, height, thickness }, units) }) : '' };
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

/** What a cell says: done, with when and by whom as far as it tells; open; or what is unclear. */
function saidIn(
  cell: string,
  order: DayOrder,
  now: number,
): { readonly at?: number; readonly who: string } | undefined | keyof typeof words.cell {
  const word = cell.toLowerCase();
  if (NOT_DONE.includes(word)) return undefined;
  if (DONE.includes(word)) return { who: '' };
  const date = readDate(cell, order);
  if (!date) return 'neither';
  if (date.kind === 'either way') return 'eitherWay';
  if (date.kind === 'none such') return 'noDay';
  if (date.at > now + DAY) return 'future';
  if (date.at < FIRST_TIME) return 'tooOld';
  return { at: Math.min(date.at, now), who: date.rest };
}

function notesIn(cell: string): readonly string[] {
  return unguarded(cell)
    .split(/\r?\n/)
    .map((note) => note.replace(/\p{Cc}/gu, ' ').trim())
    .filter((note) => note !== '');
}
