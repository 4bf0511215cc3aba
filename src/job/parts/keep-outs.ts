import { z } from 'zod';
import { printLength } from '../../length/length.js';
import type { Units } from '../../length/units.js';
import { halfWidthAt } from '../half-width.js';
import type { BoardSpec, KeepOutSpec } from '../job.js';
import type { Quantities } from '../quantities.js';
import type { Say } from '../say.js';
import { shortText } from '../text.js';
import { alongSchema, placeAlong } from './along.js';

export function keepOutsSchema(q: Quantities) {
  const across = (what: string) =>
    q.length(what, { least: 0, most: 1000, because: 'no board is wider than 2 m' }).optional();
  const size = (what: string) => q.length(what, { least: 1, most: 3000, because: 'it lies within the board' });
  return z
    .array(
      z.strictObject({
        name: shortText('what it is: fin box, leash plug, handle'),
        ...alongSchema(q, 'place of its middle'),
        right: across('its middle from the centreline, to the right of someone standing on the deck facing the nose'),
        left: across('the same, to the left'),
        both: across('the same, one on each side'),
        disc: size('diameter of a round one').optional(),
        rectangle: z
          .strictObject({ length: size('along the board'), width: size('across the board') })
          .meta({ description: 'size of a rectangular one' })
          .optional(),
      }),
    )
    .meta({ description: 'regions of the plan that no chamber may enter' });
}

export type KeepOutFile = z.infer<ReturnType<typeof keepOutsSchema>>[number];

const SIDES = ['right', 'left', 'both'] as const;

export function toKeepOuts(file: readonly KeepOutFile[] = [], board: BoardSpec, units: Units, say: Say): KeepOutSpec[] {
  return file.flatMap((one, i) => toKeepOut(one, board, units, say.at(i)));
}

function toKeepOut(file: KeepOutFile, board: BoardSpec, units: Units, say: Say): KeepOutSpec[] {
  const x = placeAlong(file, board.length, units, say);
  const sides = SIDES.filter((side) => file[side] !== undefined);
  if (sides.length > 1) say.error([sides[1]!], `its side is given as ${sides.join(' and as ')}`, 'keep one of them');
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
  if ((file.disc === undefined) === (file.rectangle === undefined)) {
    const instead = 'disc: and its diameter, or rectangle: {length: …, width: …}';
    say.error([], file.disc === undefined ? 'it has no size' : 'it has a disc and a rectangle', instead);
  }
  const at = (name: string, y: number): KeepOutSpec =>
    file.rectangle
      ? { name, kind: 'rectangle', x, y, length: file.rectangle.length, width: file.rectangle.width }
      : { name, kind: 'disc', x, y, radius: (file.disc ?? NaN) / 2 };
  if (side === 'both') return [at(`${file.name} left`, -away), at(`${file.name} right`, away)];
  return [at(file.name, side === 'left' ? -away : away)];
}
