import { z } from 'zod';
import { printLength } from '../../length/length.js';
import { printAs } from '../../length/rounded.js';
import { MM_PER_INCH, type Units } from '../../length/units.js';
import type { BlockGlueSpec, BlocksSpec, StockSpec } from '../spec/blocks.js';
import type { ChamberSpec } from '../job.js';
import type { Quantities } from '../quantities.js';
import type { Say } from '../mistake/say.js';

/**
 * What a job that says nothing gets, round in the shop's own units (mm, inches). Common practice, no source, but the
 * clamps.
 */
const DEFAULTS = {
  /** A table saw's blade. */
  kerf: { mm: 3, in: 1 / 8 },
  trim: { mm: 10, in: 3 / 8 },
  /** A rest that still gives a block. */
  keepLength: { mm: 300, in: 12 },
  keepWidth: { mm: 100, in: 4 },
  /** In the middle of the 8 to 12 in of a glue maker's guide for polyurethane glue. */
  clampSpacing: { mm: 250, in: 10 },
} as const;

/**
 * Open time: the shorter end of the 20 to 30 minutes that a shop magazine's bulletin on polyurethane glue gives.
 * Minutes, spread (beads that foam up, not a film; the same as where the board is weighed) and loss: common practice,
 * no source.
 */
const USUAL_GLUE = { openTime: 20, minutesPerBlock: 3, spread: 60, loss: 0.2 } as const;

/**
 * A clearance may take so much of the smallest chamber's height on each side: more, and glue fills what foam should.
 */
const MOST_CLEARANCE = 0.2;

export function blocksSchema(q: Quantities) {
  const size = (what: string, least: number, most: number) =>
    q.length(what, { least, most, because: 'sheets and billets of foam lie in that range' });
  const minutes = (what: string) =>
    z
      .number()
      .min(0.1, 'less than 0.1 minutes|0.1 or more')
      .max(600, 'more than 600 minutes|600 or less')
      .meta({ description: `${what}, minutes` })
      .optional();
  return z
    .strictObject({
      fit: q
        .length(
          'how much larger than its chamber a block is cut all around: 1 mm to sand off; -1 mm is room for glue',
          {
            least: -10,
            most: 25,
            because: 'beyond it a block does not fill its chamber, or most of it is sanded away',
          },
        )
        .optional(),
      corners: z
        .enum(['eased', 'square'])
        .meta({ description: 'corners eased to the cutter’s radius (the usual), or square as the saw leaves them' })
        .optional(),
      stock: z
        .array(
          z.strictObject({
            length: size('along the sheet, and along its grain', 50, 10000),
            width: size('across it', 50, 5000),
            thickness: size('its thickness', 5, 1500),
            count: z
              .number()
              .multipleOf(1, 'a part of a sheet is counted|whole sheets; list a rest by its own size, as an offcut')
              .min(0, 'fewer than none|0 or more')
              .max(10000, 'more than 10000 sheets|at most 10000')
              .meta({ description: 'how many there are; left out where more can be had' })
              .optional(),
            price: z
              .number()
              .min(0, 'a price below 0|0 or more')
              .max(1e6, 'more than a million|at most 1000000')
              .meta({ description: 'price of one, in your money' })
              .optional(),
            offcut: z
              .boolean()
              .meta({ description: 'true for what is left over from earlier: it is used first' })
              .optional(),
          }),
        )
        .max(40, 'more than 40 sizes|at most 40')
        .meta({ description: 'the sheets or billets that the blocks are cut from; without any no cuts are planned' })
        .optional(),
      kerf: q.length('width of a saw cut', { least: 0, most: 10, because: 'blades and wires cut no wider' }).optional(),
      trim: q
        .length('taken off each edge of a sheet to square it, its saw cut included', {
          least: 0,
          most: 200,
          because: 'more wastes the sheet',
        })
        .optional(),
      grain: z
        .boolean()
        .meta({ description: 'true where the foam has a grain: blocks then lie along the sheet, never across it' })
        .optional(),
      keepOffcut: z
        .strictObject({ length: size('its length', 0, 10000), width: size('its width', 0, 5000) })
        .meta({ description: 'the smallest rest worth keeping, whichever way round' })
        .optional(),
      glue: z
        .strictObject({
          minutesPerBlock: minutes('to spread glue, set and clamp one block'),
          openTime: minutes('from the first glue spread to the last clamp tight, by the glue’s own sheet'),
          spread: q
            .areal('glue spread, by area', { least: 5, most: 2000, because: 'less does not wet, more runs out' })
            .optional(),
          loss: q
            .share('glue that stays in the cup and on the brush, as a share of what is spread', {
              least: 0,
              most: 3,
              because: 'more is thrown away than used',
            })
            .optional(),
          clampSpacing: q
            .length('between clamps along the face, at most', {
              least: 30,
              most: 2000,
              because: 'they are to press every block',
            })
            .optional(),
        })
        .meta({ description: 'gluing the blocks in' })
        .optional(),
    })
    .meta({ description: 'how the blocks are cut, from what sheets, and how they are glued in' });
}

export type BlocksFile = z.infer<ReturnType<typeof blocksSchema>>;

export function toBlocks(file: BlocksFile = {}, chambers: ChamberSpec, units: Units, say: Say): BlocksSpec {
  const usual = (name: keyof typeof DEFAULTS): number =>
    units === 'mm' ? DEFAULTS[name].mm : DEFAULTS[name].in * MM_PER_INCH;
  const fit = file.fit ?? 0;
  const most = MOST_CLEARANCE * Math.min(chambers.smallest.height, chambers.smallest.length);
  if (-fit > most) {
    const print = (mm: number) => printLength(mm, units);
    const what = `a clearance of ${print(-fit)} all around leaves too little of a block for the smallest chamber`;
    say.error(['fit'], what, `a clearance of at most ${printAs('there', most, units)}, or larger smallest chambers`);
  }
  return {
    fit,
    corners: file.corners ?? 'eased',
    stock: (file.stock ?? []).map(({ length, width, thickness, count, price, offcut }): StockSpec => ({
      length,
      width,
      thickness,
      ...(count !== undefined && { count }),
      ...(price !== undefined && { price }),
      offcut: offcut ?? false,
    })),
    kerf: file.kerf ?? usual('kerf'),
    trim: file.trim ?? usual('trim'),
    grain: file.grain ?? false,
    keep: file.keepOffcut ?? { length: usual('keepLength'), width: usual('keepWidth') },
    glue: glueOf(file.glue, usual('clampSpacing'), say),
  };
}

function glueOf(file: BlocksFile['glue'] = {}, clampSpacing: number, say: Say): BlockGlueSpec {
  const glue = {
    minutesPerBlock: file.minutesPerBlock ?? USUAL_GLUE.minutesPerBlock,
    openTime: file.openTime ?? USUAL_GLUE.openTime,
    spread: file.spread ?? USUAL_GLUE.spread,
    loss: file.loss ?? USUAL_GLUE.loss,
    clampSpacing: file.clampSpacing ?? clampSpacing,
  };
  if (glue.minutesPerBlock > glue.openTime) {
    const what = `one block takes ${glue.minutesPerBlock} minutes, the glue stays open for ${glue.openTime}`;
    say.error(['glue'], what, 'a slower glue, or more hands so that a block takes less');
  }
  return glue;
}
