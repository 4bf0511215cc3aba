import { z } from 'zod';
import { MM_PER_INCH, type Units } from '../../length/units.js';
import { boardFeet, countedThickness, DRESSED_THICKNESS, DRESSED_WIDTH } from '../dressed.js';
import type { Say } from '../mistake/say.js';
import type { Quantities } from '../quantities.js';
import type { PlankSpec, RawStockSpec } from '../spec/stock.js';
import { boardSchema, toBoard } from './board.js';
import type { FindMaterial } from './materials.js';
import type { OffsetStation } from './offsets.js';

/** What a job that says nothing gets, round in the shop's own units. Common practice, no source, but the scarf. */
const DEFAULTS = {
  allowance: { mm: 2, in: 1 / 16 },
  left: { mm: 5, in: 3 / 16 },
  ends: { mm: 25, in: 1 },
  kerf: { mm: 3, in: 1 / 8 },
  planing: { mm: 1.5, in: 1 / 16 },
  planer: { mm: 2, in: 1 / 16 },
} as const;
/** Wood Handbook (FPL-GTR-190, 2010), ch. 10: 1 in 12 or flatter is strongest. */
const USUAL_SCARF = 12;

export function stockSchema(q: Quantities) {
  const length = (what: string, least: number, most: number, because: string) =>
    q.length(what, { least, most, because });
  const size = (what: string, least: number, most: number) => length(what, least, most, 'stock lies in that range');
  const price = (what: string) =>
    z
      .number()
      .min(0, 'a price below 0|0 or more')
      .max(1e6, 'more than a million|at most 1000000')
      .meta({ description: `price ${what}, in your money` })
      .optional();
  const count = z
    .number()
    .multipleOf(1, 'a part of one is counted|whole ones')
    .min(0, 'fewer than none|0 or more')
    .max(10000, 'more than 10000|at most 10000')
    .meta({ description: 'how many there are; left out where more can be had' })
    .optional();
  const kerf = length('width of a saw cut', 0, 20, 'blades and wires cut no wider').optional();
  const shift = (what: string) => length(what, -2000, 2000, 'a board lies within its blank').optional();
  return z
    .strictObject({
      blank: boardSchema(q)
        .omit({ left: true })
        .extend({
          kerf,
          place: z
            .strictObject({
              along: shift('how far the board’s nose tip lies behind the blank’s nose end'),
              up: shift('how far the board’s base line lies over the blank’s at the middle of the board’s length'),
              noseUp: shift('how far the board’s nose is raised against its tail, half up there and half down here'),
            })
            .meta({ description: 'where you lay the board in the blank; found where left out' })
            .optional(),
          slide: z
            .boolean()
            .meta({ description: 'true where the strips may be slid and tilted against each other before gluing' })
            .optional(),
          strips: z
            .array(
              z.strictObject({
                strip: z.string().meta({
                  description:
                    'its name, as every output has it: MR2; where both sides are alike its mirror image ML2 too, ' +
                    'unless that has a line of its own',
                }),
                sawnAt: length(
                  'from the blank’s centreline to its edge nearer to the centre, at the nose tip',
                  0,
                  1000,
                  'a blank is no wider',
                ).optional(),
                along: shift(
                  'the strip is slid so far toward the tail against the others; toward the nose with a minus',
                ),
                up: shift('the strip is raised so far against the others, all along; lowered with a minus'),
                noseUp: shift(
                  'the strip is raised so much more at the board’s nose tip, evenly less to nothing at its tail',
                ),
              }),
            )
            .max(40, 'more than 40 strips|at most 40')
            .meta({ description: 'strips that are sawn elsewhere than side by side, or slid before gluing' })
            .optional(),
          price: price('of the blank'),
        })
        .meta({ description: 'a moulded foam blank that is sawn lengthwise, described like a board' })
        .optional(),
      billets: z
        .array(
          z.strictObject({
            foam: z.string().meta({ description: 'its foam, as in the glue-up' }),
            length: size('its length', 100, 10000),
            width: size('its width', 10, 5000),
            thickness: size('its thickness', 5, 1500),
            count,
            price: price('of one'),
          }),
        )
        .max(40, 'more than 40 sizes|at most 40')
        .meta({ description: 'billets that the foam strips are sawn from, where there is no moulded blank' })
        .optional(),
      lumber: z
        .array(
          z.strictObject({
            wood: z.string().meta({ description: 'its wood, as in the glue-up' }),
            nominal: z
              .string()
              .meta({ description: 'its nominal size in inches, thickness x width: 1x8, 5/4x6; dressed as PS 20 says' })
              .optional(),
            width: size('its actual width, where it has no nominal size', 10, 2000).optional(),
            thickness: size('its actual thickness, where it has no nominal size', 2, 500).optional(),
            length: size('its length', 100, 10000),
            count,
            price: price('of one'),
            perBoardFoot: price('of a board foot'),
          }),
        )
        .max(40, 'more than 40 sizes|at most 40')
        .meta({ description: 'the lumber that stringers are sawn from' })
        .optional(),
      milling: z
        .strictObject({
          above: length('left over the deck, to be shaped off', 0, 200, 'more is waste').optional(),
          below: length('left under the bottom, to be shaped off', 0, 200, 'more is waste').optional(),
          ends: length('left at nose and tail', 0, 500, 'more is waste').optional(),
          kerf,
          planing: length('planed off each leaf of resawn stock', 0, 20, 'more is waste').optional(),
          scarf: z
            .number()
            .min(4, 'steeper than 1 in 4|4 or more: 12 is strongest')
            .max(30, 'flatter than 1 in 30|at most 30')
            .meta({
              description: 'length of a scarf over the thickness it goes through; 12 unless this says otherwise',
            })
            .optional(),
        })
        .meta({ description: 'how stringers, and strips from billets, are milled before the glue-up' })
        .optional(),
      allowance: length('foam that must stand over the finished board everywhere', 0, 100, 'more is waste').optional(),
      planer: length('the most that a power planer takes off in one pass', 0.2, 10, 'planers take no more').optional(),
    })
    .meta({ description: 'the raw stock: a moulded blank or billets, and lumber' });
}

export type StockFile = z.infer<ReturnType<typeof stockSchema>>;

/** @param offsets the blank's table of offsets, already read; empty when there is none */
export function toStock(
  file: StockFile,
  offsets: readonly OffsetStation[],
  material: FindMaterial,
  units: Units,
  say: Say,
): RawStockSpec {
  const usual = (name: keyof typeof DEFAULTS): number =>
    units === 'mm' ? DEFAULTS[name].mm : DEFAULTS[name].in * MM_PER_INCH;
  const { blank, billets = [], lumber = [], milling = {} } = file;
  if (blank && billets.length > 0)
    say.error(['billets'], 'the strips come from a moulded blank and from billets', 'keep one of them');
  if (!blank && billets.length === 0 && lumber.length === 0)
    say.error([], 'no stock is listed', 'a blank or billets, or lumber; or leave out stock:');
  const { place } = blank ?? {};
  return {
    ...(blank && {
      blank: {
        shape: toBoard(blank, offsets, units, say.at('blank')),
        kerf: blank.kerf ?? usual('kerf'),
        slide: blank.slide ?? false,
        strips: (blank.strips ?? []).map(({ strip, sawnAt, along, up, noseUp }) => ({
          strip,
          ...(sawnAt !== undefined && { sawnAt }),
          ...([along, up, noseUp].some((each) => each !== undefined) && {
            slid: { along: along ?? 0, up: up ?? 0, noseUp: noseUp ?? 0 },
          }),
        })),
        ...(place && { place: { along: place.along ?? 0, up: place.up ?? 0, noseUp: place.noseUp ?? 0 } }),
        ...(blank.price !== undefined && { price: blank.price }),
      },
    }),
    billets: billets.map(({ foam, length, width, thickness, count, price }, i): PlankSpec => ({
      material: material(foam, ['foam'], say.at('billets', i)),
      length,
      width,
      thickness,
      ...(count !== undefined && { count }),
      ...(price !== undefined && { price }),
    })),
    lumber: lumber.map((each, i) => toLumber(each, material, say.at('lumber', i))),
    milling: {
      above: milling.above ?? usual('left'),
      below: milling.below ?? usual('left'),
      ends: milling.ends ?? usual('ends'),
      kerf: milling.kerf ?? usual('kerf'),
      planing: milling.planing ?? usual('planing'),
      scarf: milling.scarf ?? USUAL_SCARF,
    },
    allowance: file.allowance ?? usual('allowance'),
    planer: file.planer ?? usual('planer'),
  };
}

type LumberFile = NonNullable<StockFile['lumber']>[number];

function toLumber(file: LumberFile, material: FindMaterial, say: Say): PlankSpec {
  const { wood, nominal, length, count, price, perBoardFoot } = file;
  const size = nominal === undefined ? actual(file, say) : dressed(nominal, file, say);
  const feet = boardFeet(size.inches[0], size.inches[1], length / MM_PER_INCH / 12);
  if (price !== undefined && perBoardFoot !== undefined)
    say.error(['perBoardFoot'], 'it has a price by the piece and one by the board foot', 'keep one of them');
  const one = price ?? (perBoardFoot === undefined ? undefined : Math.round(100 * perBoardFoot * feet) / 100);
  return {
    material: material(wood, ['wood'], say),
    length,
    thickness: size.thickness,
    width: size.width,
    boardFeet: feet,
    counted: [countedThickness(size.inches[0]), size.inches[1]],
    ...(nominal !== undefined && { nominal }),
    ...(count !== undefined && { count }),
    ...(one !== undefined && { price: one }),
  };
}

interface LumberSize {
  readonly thickness: number;
  readonly width: number;
  /** Thickness and width by which it is counted in board feet. */
  readonly inches: readonly [number, number];
}

function actual({ thickness = NaN, width = NaN }: LumberFile, say: Say): LumberSize {
  for (const [key, value] of Object.entries({ thickness, width }))
    if (Number.isNaN(value)) say.error([], `this lumber has no ${key}`, 'add it, or its nominal size: nominal: 1x8');
  return { thickness, width, inches: [thickness / MM_PER_INCH, width / MM_PER_INCH] };
}

function dressed(nominal: string, { thickness, width }: LumberFile, say: Say): LumberSize {
  if (thickness !== undefined || width !== undefined)
    say.error(['nominal'], 'it has a nominal size and an actual one', 'keep one of them');
  const [, over, under, wide] = /^\s*(\d+(?:\.\d+)?)(?:\s*\/\s*(\d+))?\s*(?:x|×)\s*(\d+)\s*$/i.exec(nominal) ?? [];
  const thick = Number(over) / Number(under ?? 1);
  const actualThickness = DRESSED_THICKNESS[`${thick}`];
  const actualWidth = DRESSED_WIDTH[`${wide}`];
  if (actualThickness === undefined || actualWidth === undefined) {
    const of = (sizes: object) =>
      Object.keys(sizes)
        .sort((a, b) => Number(a) - Number(b))
        .join(', ');
    say.error(
      ['nominal'],
      `"${nominal}" is no nominal size`,
      `thickness x width in inches, like 1x8 or 5/4x6: ${of(DRESSED_THICKNESS)} thick, ${of(DRESSED_WIDTH)} wide`,
    );
  }
  return {
    thickness: (actualThickness ?? NaN) * MM_PER_INCH,
    width: (actualWidth ?? NaN) * MM_PER_INCH,
    inches: [thick, Number(wide)],
  };
}
