import words from '../../../templates/cutting.json' with { type: 'json' };
import { sawnSizeOf } from '../../block/blankSize.js';
import type { Cutting } from '../../block/cut/cutting.js';
import { printAs, roundedAs } from '../../length/rounded.js';
import type { Plan } from '../../plan.js';
import { madeInWords } from './cutTables.js';
import type { Cell } from '../pages.js';
import { say } from '../../words/say.js';

/**
 * The cuts for a spreadsheet, the header first: as on the cut list, the fence in millimetres and as the builder sets
 * it.
 */
export function cutRows({ job: { units } }: Plan, { sheets }: Cutting): Cell[][] {
  return [
    words.csv.cuts.map((title) => say(title, { units })),
    ...(sheets?.sheets ?? []).flatMap(({ number, stock, cuts }) =>
      cuts.map((cut): Cell[] => [
        number,
        stock,
        cut.number,
        cut.stage,
        cut.piece,
        cut.run,
        cut.fence === undefined ? '' : roundedAs('block', cut.fence, units),
        cut.fence === undefined ? '' : printAs('block', cut.fence, units),
        cut.makes,
      ]),
    ),
  ];
}

/** The blocks as they are cut, for a spreadsheet: batch, sheets, sizes in millimetres, layers, saw angles, weight. */
export function blockRows(plan: Plan, { cuts, sheets, glue }: Cutting): Cell[][] {
  const batches = new Map(glue.batches.flatMap(({ number, blocks }) => blocks.map((id) => [id, number] as const)));
  const places = new Map(
    (sheets?.sheets ?? []).flatMap(({ number, blanks }) =>
      blanks.flatMap(({ parts }) => parts.map(({ id }) => [id, number] as const)),
    ),
  );
  return [
    words.csv.blocks,
    ...cuts.map((cut): Cell[] => {
      const { block, sawn, making, parts } = cut;
      const blank = sawnSizeOf(block, plan.job.units);
      return [
        block.id,
        block.row,
        batches.get(block.id) ?? '',
        [...new Set(parts.flatMap((id) => places.get(id) ?? []))].join(' '),
        ...[block.made.length, block.made.height, block.made.thickness].map((mm) =>
          roundedAs('block', mm, plan.job.units),
        ),
        blank.length,
        blank.height,
        making?.layers ?? '',
        making ? tenths(making.sheet) : '',
        madeInWords(plan, cut),
        sawn.sides ? tenths(sawn.sides.topInDegrees) : '',
        sawn.sides ? tenths(sawn.sides.bottomInDegrees) : '',
        tenths(block.made.weight * 1000),
        ...[block.proud?.nose, block.proud?.tail].map((mm) => (mm ? roundedAs('takenOff', mm, plan.job.units) : '')),
      ];
    }),
  ];
}

function tenths(value: number): number {
  return Math.round(value * 10) / 10;
}
