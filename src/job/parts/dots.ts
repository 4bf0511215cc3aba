import type { BoardSpec } from '../spec/board.js';
import { z } from 'zod';
import { printLength } from '../../length/length.js';
import { printAs } from '../../length/rounded.js';
import { MM_PER_INCH, type Units } from '../../length/units.js';
import type { DotSpec, GluedJointSpec, GluedPoint } from '../spec/dots.js';
import { jointNamed } from '../names.js';
import type { Quantities } from '../quantities.js';
import type { Say } from '../mistake/say.js';
import { alongSchema, placeAlong } from './along.js';

/** What a job that says nothing gets, round in the shop's own units (mm, inches). Common practice, no source. */
const DEFAULTS = {
  /** A bead the size of a coin: holds foam through shaping, breaks clean with a thin blade. */
  size: { mm: 12, in: 1 / 2 },
  margin: { mm: 12, in: 1 / 2 },
  /** So that a cutter that wanders by the usual tolerance still passes it by. */
  clearance: { mm: 6, in: 1 / 4 },
  spacing: { mm: 600, in: 24 },
  nearEnd: { mm: 200, in: 8 },
  /** A blank is glued up with about so much to spare at each end. */
  blankEnd: { mm: 25, in: 1 },
} as const;

const WAYS = ['trim', 'split', 'swallow', 'stagger'] as const;
/** Both keep the chamber's web and waste no glue in the dust; the others are the builder's to allow. */
const USUAL_WAYS = ['trim', 'split'] as const;

export function dotsSchema(q: Quantities) {
  const length = (what: string, least: number, most: number, because: string) =>
    q.length(what, { least, most, because }).optional();
  const spare = (what: string) => length(what, 0, 1000, 'a blank is cut close to its board');
  const place = {
    ...alongSchema(q, 'its middle'),
    fromBlank: length('the same, from the nose end of the rough blank', -8000, 8000, 'no blank is longer'),
    up: length(
      'its middle over the underside of the rough blank, as far as that is told, else over the lowest point of the bottom; the middle of the face unless this says otherwise',
      -500,
      1000,
      'it lies on the face',
    ),
    overBottom: length(
      'its middle over the finished bottom at this place, as the papers say it, in place of up',
      0,
      1000,
      'it lies on the face',
    ),
    underDeck: length(
      'its middle under the finished deck at this place, as the papers say it, in place of up',
      0,
      1000,
      'it lies on the face',
    ),
  };
  const size = (what: string) => length(what, 2, 200, 'a dot is pressed out to about the size of a coin');
  return z
    .strictObject({
      size: size('diameter of a dot when the joint is pressed'),
      margin: length('from a dot to the finished surface, at least', 0, 200, 'the face is not much higher'),
      clearance: length('from a dot to a chamber, at least', 0, 200, 'more leaves no chamber'),
      spacing: length('from dot to dot, at most', 30, 4000, 'it is measured along the board'),
      nearEnd: length(
        'from either end of a joint to its first dot, at most',
        10,
        4000,
        'it is measured along the board',
      ),
      may: z
        .array(z.enum(WAYS))
        .meta({
          description:
            'what a chamber in a dot’s way may suffer: trim (made shorter), split (in two around the dot), swallow (the dot is routed away), stagger (a row is shifted until webs meet); trim and split unless this says otherwise',
        })
        .optional(),
      blank: z
        .strictObject({
          nose: spare('how far it stands out before the nose'),
          tail: spare('how far it stands out behind the tail'),
          below: spare('how far its underside lies below the lowest point of the bottom'),
          thick: length(
            'from its underside to its top, where it is a box: left out where the strips are sawn to the rocker',
            10,
            1000,
            'it holds the board',
          ),
        })
        .meta({ description: 'the rough blank that is glued up, from which the dots are measured' })
        .optional(),
      glued: z
        .array(
          z.strictObject({
            joint: z.string().meta({ description: 'the joint: JL2, JC, JR1' }),
            dots: z
              .array(z.strictObject({ ...place, size: size('its diameter, where it differs') }))
              .meta({
                description: 'where all dots of this joint really are; left out where they are as planned',
              })
              .optional(),
            smears: z
              .array(
                z.strictObject({
                  from: z.strictObject(place).meta({ description: 'where it begins' }),
                  to: z.strictObject(place).meta({ description: 'where it ends' }),
                  width: q.length('across the smear', {
                    least: 1,
                    most: 200,
                    because: 'smears of glue lie in that range',
                  }),
                }),
              )
              .meta({ description: 'glue where none was meant, from one place to another' })
              .optional(),
          }),
        )
        .meta({ description: 'joints that are glued already: where the glue really went' })
        .optional(),
    })
    .meta({ description: 'the dots of glue that hold dotted joints until they are opened' });
}

export type DotsFile = z.infer<ReturnType<typeof dotsSchema>>;
type GluedFile = NonNullable<DotsFile['glued']>[number];
type PlaceFile = GluedFile['dots'] extends readonly (infer One)[] | undefined ? Omit<One, 'size'> : never;

export function toDots(file: DotsFile = {}, board: BoardSpec, units: Units, say: Say): DotSpec {
  const usual = (name: keyof typeof DEFAULTS): number =>
    units === 'mm' ? DEFAULTS[name].mm : DEFAULTS[name].in * MM_PER_INCH;
  const blank = {
    nose: file.blank?.nose ?? usual('blankEnd'),
    tail: file.blank?.tail ?? usual('blankEnd'),
    below: file.blank?.below ?? 0,
    ...(file.blank?.thick !== undefined && { thickness: file.blank.thick }),
  };
  checkBox(blank, board, units, say);
  const diameter = file.size ?? usual('size');
  const spacing = file.spacing ?? usual('spacing');
  if (spacing < 2 * diameter) {
    const what = `dots of ${printLength(diameter, units)} no further apart than ${printLength(spacing, units)} run together`;
    say.error(['spacing'], what, `at least ${printAs('needed', 2 * diameter, units)}, or smaller dots`);
  }
  const point = (at: PlaceFile, here: Say): GluedPoint => ({
    x: placeOnBlank(at, blank.nose, board.length, units, here),
    ...heightOf(at, blank.below, here),
  });
  const seen = new Set<string>();
  const glued = (file.glued ?? []).map((one, i): GluedJointSpec => {
    const here = say.at('glued', i);
    const joint = jointNamed(one.joint);
    if (seen.has(joint)) here.error(['joint'], `joint ${joint} is there twice`, 'one entry a joint');
    seen.add(joint);
    const dots = one.dots?.map((dot, d) => ({
      ...point(dot, here.at('dots', d)),
      diameter: dot.size ?? diameter,
    }));
    dots?.forEach((dot, d) => {
      const other = dots.findIndex((each, o) => o < d && overlap(each, dot));
      if (other < 0) return;
      const apart = printLength(Math.hypot(dot.x - dots[other]!.x, apartInHeight(dot, dots[other]!)), units);
      const what = `this dot and dot ${other + 1} of joint ${joint} overlap: their middles are ${apart} apart`;
      here.error(
        ['dots', d],
        what,
        `at least ${printAs('needed', (dot.diameter + dots[other]!.diameter) / 2, units)}, or one smear`,
      );
    });
    const smears = (one.smears ?? []).map((smear, s) => ({
      from: point(smear.from, here.at('smears', s, 'from')),
      to: point(smear.to, here.at('smears', s, 'to')),
      width: smear.width,
    }));
    return { joint, ...(dots && { dots }), smears };
  });
  return {
    diameter,
    margin: file.margin ?? usual('margin'),
    clearance: file.clearance ?? usual('clearance'),
    spacing,
    nearEnd: file.nearEnd ?? usual('nearEnd'),
    may: file.may ?? USUAL_WAYS,
    blank,
    glued,
  };
}

/** A box must hold the board with its rocker: from the underside to the highest point of the deck. */
function checkBox({ below, thickness }: DotSpec['blank'], { profile }: BoardSpec, units: Units, say: Say): void {
  const tall = below + Math.max(...profile.map((at) => at.bottom + at.thickness));
  if (thickness === undefined || !(tall > thickness + SAME)) return;
  const needed = (mm: number) => printAs('needed', mm, units);
  say.error(
    ['blank', 'thick'],
    `a box of ${printLength(thickness, units)} is ${needed(tall - thickness)} too thin: with its rocker the board stands ${needed(tall)} over the box's underside`,
    `at least ${needed(tall)}, or leave thick out where the strips are sawn to the rocker`,
  );
}

/** A box may lack so little, mm: nothing a rule shows. */
const SAME = 0.05;

type Round = GluedPoint & { readonly diameter: number };

/** Whether two dots run into each other. */
function overlap(a: Round, b: Round): boolean {
  return Math.hypot(a.x - b.x, apartInHeight(a, b)) < (a.diameter + b.diameter) / 2;
}

/**
 * Both at the middle of the face lie at about the same height; of heights that were measured in different ways only the
 * face can tell.
 */
function apartInHeight({ height: a }: GluedPoint, { height: b }: GluedPoint): number {
  if (!a || !b) return 0;
  const [way, mm] = Object.entries(a)[0] as [string, number];
  const [otherWay, other] = Object.entries(b)[0] as [string, number];
  return way === otherWay ? mm - other : Infinity;
}

const HEIGHTS = ['up', 'overBottom', 'underDeck'] as const;

function heightOf(at: PlaceFile, below: number, say: Say): Pick<GluedPoint, 'height'> {
  const given = HEIGHTS.filter((key) => at[key] !== undefined);
  if (given.length > 1) say.error([given[1]!], 'its height is given twice', `keep one of ${HEIGHTS.join(', ')}`);
  if (at.up !== undefined) return { height: { z: at.up - below } };
  if (at.overBottom !== undefined) return { height: { overBottom: at.overBottom } };
  return at.underDeck === undefined ? {} : { height: { underDeck: at.underDeck } };
}

/** A place told from the board's ends or from the blank's. */
function placeOnBlank(at: PlaceFile, nose: number, length: number, units: Units, say: Say): number {
  if (at.fromBlank === undefined) return placeAlong(at, length, units, say);
  if (at.at !== undefined || at.fromTail !== undefined) {
    say.error(['fromBlank'], 'its place is given twice', 'keep one of at, fromTail and fromBlank');
    return NaN;
  }
  return placeAlong({ at: at.fromBlank - nose }, length, units, say);
}
