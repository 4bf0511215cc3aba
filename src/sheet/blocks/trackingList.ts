import { sawnSizeOf } from '../../block/blankSize.js';
import type { Block } from '../../block/block.js';
import { gluingOf } from '../../block/glue/gluing.js';
import { roundedAs } from '../../length/rounded.js';
import { KG_PER_POUND, type Units } from '../../length/units.js';
import type { Plan } from '../../plan.js';
import type { Cell, TablePage, TableRow } from '../pages.js';
import { lengthCell } from '../face/pole.js';
import { say, WORDS } from '../../words/say.js';

/** What was done to a block, in the order of the steps in `templates/sheets.json`. */
export type Done = (block: Block) => readonly boolean[];

const NOTHING_DONE: Done = () => [];

/**
 * The list to tick off in gluing order: row after row from the left rail to the right, blocks from nose to tail, a box
 * for each step, what a page and all blocks weigh.
 */
export function trackingList(plan: Plan, done: Done = NOTHING_DONE): TablePage {
  const { tracking } = WORDS;
  const { columns } = tracking;
  const { units } = plan.job;
  const batches = batchesOf(plan);
  return {
    kind: 'table',
    title: tracking.title,
    notes: tracking.notes,
    columns: [
      { title: columns.block, kind: 'text' },
      { title: columns.length, kind: 'number' },
      { title: columns.height, kind: 'number' },
      { title: columns.thickness, kind: 'number' },
      { title: columns.weight, kind: 'number', total: (kg) => fineWeight(kg, units) },
      { title: columns.batch, kind: 'text' },
      ...tracking.steps.map((title) => ({ title, kind: 'tick' as const })),
    ],
    rows: plan.layup.rows.flatMap((row): TableRow[] => {
      const blocks = plan.blocks.filter((block) => block.row === row.id);
      if (blocks.length === 0) return [];
      const heading = say(tracking.row, { row: row.id, piece: row.piece, count: blocks.length });
      return [
        { kind: 'heading', text: heading },
        ...blocks.map((block): TableRow => ({
          kind: 'row',
          cells: [
            ...sizesOf(block, plan),
            { value: block.made.weight, text: fineWeight(block.made.weight, units) },
            batches.get(block.id) ?? '',
            ...ticks(done(block)),
          ],
        })),
      ];
    }),
  };
}

/**
 * The same list for a spreadsheet, its header first: sizes in millimetres as numbers and as the builder measures them,
 * a column for each step.
 */
export function trackingRows(plan: Plan, done: Done = NOTHING_DONE): Cell[][] {
  const { columns, steps } = WORDS.tracking;
  const written = [columns.length, columns.height, columns.thickness];
  const batches = batchesOf(plan);
  return [
    [
      columns.block,
      'row',
      ...written.map((name) => `${name} mm`),
      ...written.map((name) => `${name} on the rule, ${plan.job.units}`),
      `${columns.weight} g`,
      columns.batch,
      ...steps,
    ],
    ...plan.blocks.map((block) => {
      const { length, height, thickness } = sawnSizeOf(block, plan.job.units);
      const sizes = [length, height, thickness];
      return [
        block.id,
        block.row,
        ...sizes.map((mm) => roundedAs('block', mm, plan.job.units)),
        ...sizes.map((mm) => textOf(lengthCell(mm, plan.job.units, 'block'))),
        Math.round(block.made.weight * 10000) / 10,
        batches.get(block.id) ?? '',
        ...ticks(done(block)).map((ticked) => (ticked ? 'x' : '')),
      ];
    }),
  ];
}

/** The number of the batch each block is glued in. */
function batchesOf(plan: Plan): ReadonlyMap<string, string> {
  return new Map(
    gluingOf(plan).batches.flatMap(({ number, blocks }) => blocks.map((id) => [id, String(number)] as const)),
  );
}

function sizesOf(block: Block, plan: Plan): Cell[] {
  const { units } = plan.job;
  const { length, height, thickness } = sawnSizeOf(block, units);
  return [block.id, ...[length, height, thickness].map((mm) => lengthCell(mm, units, 'block'))];
}

function ticks(done: readonly boolean[]): boolean[] {
  return WORDS.tracking.steps.map((_, i) => done[i] ?? false);
}

function textOf(cell: Cell): string {
  return typeof cell === 'object' ? cell.text : String(cell);
}

/** Finer than a shop's scale: a block weighs a few grams. */
function fineWeight(kg: number, units: Units): string {
  return units === 'mm' ? `${(kg * 1000).toFixed(1)} g` : `${((kg / KG_PER_POUND) * 16).toFixed(2)} oz`;
}
