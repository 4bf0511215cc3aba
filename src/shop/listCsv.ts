import Papa from 'papaparse';
import { roundedAs } from '../length/rounded.js';
import type { Units } from '../length/units.js';
import type { Happening } from './event.js';
import { stageOf, UNTOUCHED, type BlockState, type ShopState } from './state.js';
import { STEPS, type Step } from './step.js';
import { blocksByRow, type TrackedBlock } from './trackedBlock.js';

/** Something in a list that cannot be taken over: where, what, what to do. */
export interface ListFinding {
  /** As a spreadsheet numbers its lines, the heading being line 1; 0 for the whole file. */
  readonly line: number;
  readonly what: string;
}

export type ReadList =
  | { readonly ok: true; readonly entries: readonly Happening[]; readonly differences: readonly string[] }
  | { readonly ok: false; readonly findings: readonly ListFinding[] };

const SIZES = ['length_mm', 'height_mm', 'thickness_mm'] as const;
const COLUMNS = ['block', 'row', 'place', ...SIZES, ...STEPS, 'notes'];
const DONE = ['x', 'yes', 'y', 'done', '1', 'true', 'ok', '✓', '✔'];
/** How a cell begins that a spreadsheet would compute, or that carries our guard already. */
const GUARDED = /^[=+\-@\t\r']/;
const NOT_DONE = ['', 'no', 'n', '0', 'false', '-', 'open'];

/**
 * The tracking list as CSV (RFC 4180): a line for each block in the order it lies in the board, for each step the time it was done
 * (ISO 8601, UTC), the notes. Words that a spreadsheet would take for a formula are marked with an apostrophe.
 */
export function writeList(blocks: readonly TrackedBlock[], state: ShopState, units: Units): string {
  const lines = [...blocksByRow(blocks).values()].flat().map((block) => {
    const { length, height, thickness } = block.sizes;
    const its = state.blocks.get(block.id) ?? UNTOUCHED;
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
    ];
  });
  return Papa.unparse({ fields: COLUMNS, data: lines }, { escapeFormulae: GUARDED, newline: '\r\n' }) + '\r\n';
}

/**
 * Reads a tracking list back, from this tool or from a spreadsheet (whatever separates the columns there). It only adds: a step done
 * in the list and not here, a note not yet here. What is done here and not in the list stays done and is named in `differences`.
 * Where anything is unclear, nothing is taken over.
 */
export function readList(text: string, blocks: readonly TrackedBlock[], state: ShopState): ReadList {
  const { data, meta, errors } = Papa.parse<Record<string, string>>(text.replace(/^\uFEFF/, ''), {
    header: true,
    transformHeader: (heading) => heading.trim().toLowerCase(),
  });
  const missing = ['block', ...STEPS].filter((column) => !(meta.fields ?? []).includes(column));
  if (missing.length > 0) {
    const what = `The first line must name the columns. Missing: ${missing.join(', ')}. Needed: block, ${STEPS.join(', ')}; notes if any.`;
    return { ok: false, findings: [{ line: 1, what }] };
  }
  const known = new Set(blocks.map(({ id }) => id));
  const seen = new Map<string, number>();
  const findings: ListFinding[] = errors
    .filter(({ type }) => type === 'Quotes')
    .map(({ row }) => ({ line: (row ?? 0) + 2, what: 'A quotation mark is not closed. Save the list as CSV again.' }));
  const entries: Happening[] = [];
  const differences: string[] = [];
  for (const [index, record] of data.entries()) {
    const line = index + 2;
    if (Object.values(record).every((cell) => String(cell).trim() === '')) continue;
    const id = unguarded(record.block ?? '').trim();
    if (!known.has(id)) {
      findings.push({
        line,
        what: `Block “${id}” is not in the plan. Block numbers look like ${blocks[0]?.id ?? 'R2-07'}.`,
      });
      continue;
    }
    const before = seen.get(id);
    if (before !== undefined)
      findings.push({ line, what: `Block ${id} stands in line ${before} already. Keep one of the two.` });
    seen.set(id, line);
    const its = state.blocks.get(id) ?? UNTOUCHED;
    for (const step of STEPS) {
      const said = isDone(record[step] ?? '');
      const here = doneAt(its, step) !== '';
      if (said === undefined) {
        const what = `${id}, ${step}: “${record[step]}” is neither done nor open. Write x or a date for done, nothing for open.`;
        findings.push({ line, what });
      } else if (said && !here) entries.push({ kind: 'step', block: id, step, done: true });
      else if (!said && here) differences.push(`${id}: ${step} here, open in the list. It stays ${step}.`);
    }
    for (const note of notesIn(record.notes ?? '')) {
      if (!its.notes.some(({ text }) => text.split('\n').includes(note)))
        entries.push({ kind: 'note', block: id, text: note });
    }
  }
  if (seen.size === 0 && findings.length === 0) findings.push({ line: 0, what: 'The list has no lines.' });
  return findings.length > 0 ? { ok: false, findings } : { ok: true, entries, differences };
}

/** When a step was first done, or `yes` where a later step says that it was, or nothing. */
function doneAt(block: BlockState, step: Step): string {
  const marks = block.marks[step] ?? [];
  if (marks.length > 0) return new Date(Math.min(...marks.map(({ happened }) => happened))).toISOString();
  const stage = stageOf(block);
  return stage !== undefined && STEPS.indexOf(stage) > STEPS.indexOf(step) ? 'yes' : '';
}

/** A cell is done if it says so or holds a date, open if it says so or is empty, else unclear. */
function isDone(cell: string): boolean | undefined {
  const word = unguarded(cell).trim().toLowerCase();
  if (NOT_DONE.includes(word)) return false;
  return DONE.includes(word) || /\d{4}-\d\d-\d\d|\d{1,2}[./]\d{1,2}[./]\d{2,4}/.test(word) ? true : undefined;
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
