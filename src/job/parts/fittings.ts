import type { BoardSpec } from '../spec/board.js';
import { z } from 'zod';
import type { Units } from '../../length/units.js';
import type { FittingSpec } from '../spec/finish.js';
import type { Quantities } from '../quantities.js';
import type { Say } from '../mistake/say.js';
import { shortText } from '../text.js';
import { alongSchema, placeAlong } from './along.js';

export function fittingsSchema(q: Quantities) {
  return z
    .array(
      z.strictObject({
        name: shortText('what it is: fin box, leash plug, handle, deck pad'),
        ...alongSchema(q, 'place of its middle'),
        weight: q.weight('what it weighs', { least: 0.001, most: 50, because: 'the fittings of one board weigh less' }),
      }),
    )
    .meta({ description: 'what else is built in, for its weight' });
}

export type FittingFile = z.infer<ReturnType<typeof fittingsSchema>>[number];

export function toFittings(file: readonly FittingFile[] = [], board: BoardSpec, units: Units, say: Say): FittingSpec[] {
  return file.map((fitting, i) => {
    const { name, weight } = fitting;
    return { name, x: placeAlong(fitting, board.length, units, say.at(i)), weight };
  });
}
