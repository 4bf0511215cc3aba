import { columnsOf, row } from '../table.js';
import words from '../../../templates/cutting.json' with { type: 'json' };
import { sawnSizeOf } from '../../block/blankSize.js';
import type { BlockCut, Cutting } from '../../block/cut/cutting.js';
import type { CutSheet } from '../../block/cut/cutPlan.js';
import { FLUSH } from '../../block/cut/making.js';
import { fenceSettings } from '../../block/cut/fenceSettings.js';
import { sizesOf } from '../../block/sizes.js';
import { sayProud } from '../../block/sayProud.js';
import { printLength } from '../../length/length.js';
import { printAs } from '../../length/rounded.js';
import type { Plan } from '../../plan.js';
import type { TablePage, TableRow } from '../pages.js';
import { lengthCell } from '../face/pole.js';
import { say } from '../../words/say.js';

/** Every cut of every sheet in the order of work, with the fence. */
export function cutList(plan: Plan, sheets: readonly CutSheet[]): TablePage {
  const { units } = plan.job;
  const { columns, heading, title, notes, byEye, run } = words.list;
  return {
    kind: 'table',
    title,
    notes,
    columns: columnsOf(
      [columns.cut, 'number'],
      [columns.stage, 'number'],
      [columns.piece, 'text'],
      [columns.run, 'text'],
      [columns.fence, 'text'],
      [columns.makes, 'text'],
    ),
    rows: sheets.flatMap(({ number, foam, length, width, cuts }): TableRow[] => [
      {
        kind: 'heading',
        text: say(heading, { number, foam, size: `${printLength(length, units)} × ${printLength(width, units)}` }),
      },
      ...cuts.map((cut) =>
        row(
          cut.number,
          cut.stage,
          cut.piece,
          run[cut.run],
          cut.fence === undefined ? byEye : printAs('block', cut.fence, units),
          cut.makes,
        ),
      ),
    ]),
  };
}

/** Every position of the fence, and all cuts that are made with it. */
export function fenceTable(plan: Plan, sheets: readonly CutSheet[]): TablePage {
  const { columns, title, notes } = words.fence;
  return {
    kind: 'table',
    title,
    notes,
    columns: columnsOf(
      [columns.stage, 'number'],
      [columns.run, 'text'],
      [columns.fence, 'number'],
      [columns.cuts, 'text'],
    ),
    rows: fenceSettings(sheets).map(({ stage, run, fence, cuts }) =>
      row(
        stage,
        words.list.run[run],
        lengthCell(fence, plan.job.units, 'block'),
        cuts.map(({ sheet, number }) => `${sheet}.${number}`).join(', '),
      ),
    ),
  };
}

/** Blank, layers, and saw angles of every block. */
export function makingTable(plan: Plan, { cuts }: Cutting): TablePage {
  const { units } = plan.job;
  const { columns, title, notes } = words.making;
  const degrees = (value: number | undefined) => (value === undefined ? '' : `${value.toFixed(1)}°`);
  const lines = cuts.map((cut) => {
    const { block, sawn } = cut;
    const size = sawnSizeOf(block, units);
    return [
      block.id,
      block.guide ?? '',
      [size.length, size.height].map((mm) => printAs('block', mm, units)).join(' × '),
      lengthCell(block.made.thickness, units, 'block'),
      madeInWords(plan, cut),
      sawn.sides ? '' : degrees((sawn.turned * 180) / Math.PI),
      degrees(sawn.sides?.topInDegrees),
      degrees(sawn.sides?.bottomInDegrees),
      sayProud(block.proud, units),
    ] as const;
  });
  const names = [columns.block, columns.guide, columns.blank, columns.thick, columns.how];
  const titles = [...names, columns.turned, columns.top, columns.bottom, columns.proud];
  // A column that no block has anything to say in is left out.
  const used = titles.map((_, i) => lines.some((cells) => cells[i] !== ''));
  return {
    kind: 'table',
    title,
    notes,
    columns: titles
      .map((name) => ({ title: name, kind: name === columns.thick ? ('number' as const) : ('text' as const) }))
      .filter((_, i) => used[i]),
    rows: lines.map((cells) => row(...cells.filter((_, i) => used[i]))),
  };
}

/** How a block gets its thickness, in words; empty where no sheets are listed. */
export function madeInWords(plan: Plan, { making }: BlockCut): string {
  if (!making) return words.making.noSheet;
  const print = (mm: number) => printLength(mm, plan.job.units);
  const { way, sheet, layers, surplus } = making;
  const planed = way === 'laminated' && surplus > FLUSH;
  return say(words.making.way[planed ? 'laminatedPlaned' : way], {
    sheet: print(sheet),
    layers,
    surplus: printAs('takenOff', surplus, plan.job.units),
  });
}

/** Blocks by size. */
export function sizesTable(plan: Plan): TablePage {
  const { units } = plan.job;
  const { columns, title, notes } = words.sizes;
  return {
    kind: 'table',
    title,
    notes,
    columns: [
      { title: columns.length, kind: 'number' },
      { title: columns.height, kind: 'number' },
      { title: columns.thick, kind: 'number' },
      { title: columns.count, kind: 'number', total: (sum) => String(sum) },
      { title: columns.blocks, kind: 'text' },
    ],
    rows: sizesOf(plan.blocks, units).map(({ length, height, thickness, blocks }) =>
      row(...[length, height, thickness].map((mm) => lengthCell(mm, units, 'block')), blocks.length, blocks.join(', ')),
    ),
  };
}
