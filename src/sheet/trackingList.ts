import type { Block } from '../block/block.js';
import type { Plan } from '../plan.js';
import type { Cell, TablePage, TableRow } from './pages.js';
import { lengthCell } from './pole.js';
import { say, WORDS } from './words.js';

/** What was done to a block, in the order of the steps in `templates/sheets.json`. */
export type Done = (block: Block) => readonly boolean[];

const NOTHING_DONE: Done = () => [];

/** The list to tick off: row after row from the left rail to the right, blocks from nose to tail, a box for each step. */
export function trackingList(plan: Plan, done: Done = NOTHING_DONE): TablePage {
  const { tracking } = WORDS;
  const { columns } = tracking;
  return {
    kind: 'table',
    title: tracking.title,
    notes: tracking.notes,
    columns: [
      { title: columns.block, kind: 'text' },
      { title: columns.length, kind: 'number' },
      { title: columns.height, kind: 'number' },
      { title: columns.thickness, kind: 'number' },
      ...tracking.steps.map((title) => ({ title, kind: 'tick' as const })),
    ],
    rows: plan.layup.rows.flatMap((row): TableRow[] => {
      const blocks = plan.blocks.filter((block) => block.row === row.id);
      if (blocks.length === 0) return [];
      const heading = say(tracking.row, { row: row.id, piece: row.piece, count: blocks.length });
      return [
        { kind: 'heading', text: heading },
        ...blocks.map((block): TableRow => ({ kind: 'row', cells: [...sizesOf(block, plan), ...ticks(done(block))] })),
      ];
    }),
  };
}

/** The same list for a spreadsheet, its header first: sizes in millimetres as numbers and as the builder measures them, a column for each step. */
export function trackingRows(plan: Plan, done: Done = NOTHING_DONE): Cell[][] {
  const { columns, steps } = WORDS.tracking;
  const written = [columns.length, columns.height, columns.thickness];
  return [
    [columns.block, 'row', ...written.map((name) => `${name} mm`), ...written, ...steps],
    ...plan.blocks.map((block) => {
      const { length, height, thickness } = block.made;
      const sizes = [length, height, thickness];
      return [
        block.id,
        block.row,
        ...sizes.map((mm) => Math.round(mm * 10) / 10),
        ...sizes.map((mm) => textOf(lengthCell(mm, plan.job.units))),
        ...ticks(done(block)).map((ticked) => (ticked ? 'x' : '')),
      ];
    }),
  ];
}

function sizesOf({ id, made }: Block, plan: Plan): Cell[] {
  const { units } = plan.job;
  return [id, lengthCell(made.length, units), lengthCell(made.height, units), lengthCell(made.thickness, units)];
}

function ticks(done: readonly boolean[]): boolean[] {
  return WORDS.tracking.steps.map((_, i) => done[i] ?? false);
}

function textOf(cell: Cell): string {
  return typeof cell === 'object' ? cell.text : String(cell);
}
