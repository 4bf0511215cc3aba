import type { BoardSpec } from '../spec/board.js';
import { polygonAround } from '../../contour/around.js';
import type { Point } from '../../contour/point.js';
import { rectangleAround } from '../../contour/rectangle.js';
import { z } from 'zod';
import { printLength } from '../../length/length.js';
import { MM_PER_INCH, type Units } from '../../length/units.js';
import { halfWidthAt } from '../half-width.js';
import type { JointKeepOutSpec, KeepOutSpec } from '../job.js';
import { jointNamed } from '../names.js';
import type { Quantities } from '../quantities.js';
import type { Say } from '../mistake/say.js';
import { shortText } from '../text.js';
import { alongSchema, placeAlong } from './along.js';
import { closedPath } from './closed-path.js';

export function keepOutsSchema(q: Quantities) {
  const across = (what: string) => q.length(what, { least: 0, most: 1000, because: 'no board is wider' }).optional();
  const size = (what: string) => q.length(what, { least: 1, most: 3000, because: 'it lies within the board' });
  const deep = (what: string) => q.length(what, { least: 1, most: 500, because: 'no board is thicker' }).optional();
  const offset = (what: string) => q.length(what, { least: -3000, most: 3000, because: 'it lies within the board' });
  return z
    .array(
      z.strictObject({
        name: shortText('what it is: fin box, leash plug, handle, vent'),
        ...alongSchema(q, 'place of its middle'),
        right: across('its middle from the centreline, to the right of someone standing on the deck facing the nose'),
        left: across('the same, to the left'),
        both: across('the same, one on each side'),
        joint: z
          .string()
          .meta({ description: 'or drawn on a joint, on both its faces: the name of the joint, JL2, JC or JR1' })
          .optional(),
        up: q
          .length('on a joint: its middle over the lowest point of the bottom', {
            least: -500,
            most: 1000,
            because: 'it lies on the board',
          })
          .optional(),
        disc: size('diameter of a round one').optional(),
        rectangle: z
          .strictObject({ length: size('along the board'), width: size('across the board; on a joint, its height') })
          .meta({ description: 'size of a rectangular one' })
          .optional(),
        polygon: z
          .array(z.tuple([offset('from its middle toward the tail'), offset('to the right; on a joint, up')]))
          .min(3, 'fewer than three corners are written|at least three corners')
          .meta({ description: 'corners of any closed outline, from its middle' })
          .optional(),
        path: z
          .string()
          .meta({
            description:
              "any closed outline as the data of an SVG path, numbers in the file's units, x from its middle toward the tail, y to the right; on a joint, up",
          })
          .optional(),
        fromDeck: deep('how deep under the deck it reaches; right through unless this or fromBottom is given'),
        fromBottom: deep('how high over the bottom it reaches'),
      }),
    )
    .meta({ description: 'regions that no chamber may enter' });
}

export type KeepOutFile = z.infer<ReturnType<typeof keepOutsSchema>>[number];
const SIDES = ['right', 'left', 'both'] as const;
const SHAPES = ['disc', 'rectangle', 'polygon', 'path'] as const;
/** Straight sides that stand for a round keep-out on a joint; they go around it. */
const ROUND = 48;

export interface KeepOuts {
  readonly keepOuts: KeepOutSpec[];
  readonly jointKeepOuts: JointKeepOutSpec[];
}

export function toKeepOuts(file: readonly KeepOutFile[] = [], board: BoardSpec, units: Units, say: Say): KeepOuts {
  const keepOuts: KeepOutSpec[] = [];
  const jointKeepOuts: JointKeepOutSpec[] = [];
  file.forEach((one, i) => {
    const here = say.at(i);
    const shapes = SHAPES.filter((shape) => one[shape] !== undefined);
    if (shapes.length !== 1) {
      const what = shapes.length === 0 ? 'it has no size' : `it has a ${shapes.join(' and a ')}`;
      here.error([], what, 'disc: and its diameter, rectangle: {length: …, width: …}, polygon: or path:');
    }
    if (one.joint === undefined) keepOuts.push(...onPlan(one, board, units, here));
    else jointKeepOuts.push(...onJoint(one, jointNamed(one.joint), board, units, here));
  });
  return { keepOuts, jointKeepOuts };
}

function onPlan(file: KeepOutFile, board: BoardSpec, units: Units, say: Say): KeepOutSpec[] {
  const x = placeAlong(file, board.length, units, say);
  const sides = SIDES.filter((side) => file[side] !== undefined);
  if (sides.length > 1) say.error([sides[1]!], `its side is given as ${sides.join(' and as ')}`, 'keep one of them');
  if (file.up !== undefined) say.error(['up'], 'a height is given, but no joint', 'joint: as well, or fromDeck:');
  const side = sides[0];
  const away = side === undefined ? 0 : file[side]!;
  const half = halfWidthAt(side === 'left' ? (board.left ?? board.right) : board.right, board.length, x);
  if (away > half) {
    say.error(
      [side!],
      `its middle lies ${printLength(away - half, units)} outside the rail`,
      `less than ${printLength(half, units)} there`,
    );
  }
  const depth = depthOf(file, say);
  const outline = outlineOf(file, units, say);
  const at = (name: string, y: number, mirror: 1 | -1): KeepOutSpec => {
    const common = { name, ...(depth && { depth }) };
    if (file.rectangle) return { ...common, kind: 'rectangle', x, y, ...file.rectangle };
    if (outline) return { ...common, kind: 'polygon', points: outline.map(([a, b]): Point => [x + a, y + mirror * b]) };
    return { ...common, kind: 'disc', x, y, radius: (file.disc ?? NaN) / 2 };
  };
  if (side === 'both') return [at(`${file.name} left`, -away, -1), at(`${file.name} right`, away, 1)];
  return [at(file.name, side === 'left' ? -away : away, side === 'left' ? -1 : 1)];
}

function onJoint(file: KeepOutFile, joint: string, board: BoardSpec, units: Units, say: Say): JointKeepOutSpec[] {
  const x = placeAlong(file, board.length, units, say);
  for (const key of [...SIDES, 'fromDeck', 'fromBottom'] as const) {
    if (file[key] !== undefined)
      say.error([key], `it is drawn on a joint, where "${key}" means nothing`, 'leave it out');
  }
  if (file.up === undefined)
    say.error([], 'it has no height on the joint', 'add "up": its middle over the lowest point of the bottom');
  const { disc, rectangle } = file;
  const outline = rectangle
    ? rectangleAround([0, 0], rectangle.length, rectangle.width)
    : (outlineOf(file, units, say) ?? polygonAround([0, 0], (disc ?? NaN) / 2, ROUND));
  return [{ name: file.name, joint, points: outline.map(([a, b]): Point => [x + a, (file.up ?? NaN) + b]) }];
}

function depthOf({ fromDeck, fromBottom }: KeepOutFile, say: Say): KeepOutSpec['depth'] {
  if (fromDeck !== undefined && fromBottom !== undefined)
    say.error(['fromBottom'], 'it reaches in from the deck and from the bottom', 'keep one, or write two keep-outs');
  if (fromDeck !== undefined) return { from: 'deck', deep: fromDeck };
  return fromBottom === undefined ? undefined : { from: 'bottom', deep: fromBottom };
}

/** A polygon's or a path's corners from its middle, mm. */
function outlineOf({ polygon, path }: KeepOutFile, units: Units, say: Say): Point[] | undefined {
  if (polygon) {
    if (polygon.flat().some(Number.isNaN)) return [];
    return closedPath(`M${polygon.map(([a, b]) => `${a} ${b}`).join('L')}Z`, 1, say.at('polygon'));
  }
  return path === undefined ? undefined : closedPath(path, units === 'in' ? MM_PER_INCH : 1, say.at('path'));
}
