import type { BoardSpec } from '../spec/board.js';
import { z } from 'zod';
import type { Units } from '../../length/units.js';
import type { Quantities } from '../quantities.js';
import type { Say } from '../mistake/say.js';
import type { Measured } from '../spec/shaped.js';
import { shortText } from '../text.js';
import { alongSchema, placeAlong } from './along.js';
import { checkMeasured } from './measured.js';

export function shapedSchema(q: Quantities) {
  const bounds = { least: 0.5, most: 1200, because: 'it was measured on a board' };
  return z
    .array(
      z.strictObject({
        ...alongSchema(q, 'where it was measured'),
        side: q
          .length('how far from the centreline a thickness was measured, to the right; with a minus to the left', {
            least: -600,
            most: 600,
            because: 'it lies on the board',
          })
          .optional(),
        thickness: q.length('thickness measured with a caliper, straight up and down', bounds).optional(),
        off: z.enum(['deck', 'bottom', 'both']).optional().meta({
          description: 'where the difference in thickness lies; half on each side when this is left out',
        }),
        width: q.length('width from rail to rail', bounds).optional(),
        chamber: shortText('number of a chamber whose wall was measured at its thinnest place').optional(),
        deck: q.length('deck skin measured there', bounds).optional(),
        bottom: q.length('bottom skin measured there', bounds).optional(),
        rail: q.length('rail wall measured there', bounds).optional(),
      }),
    )
    .meta({
      description: 'what was measured after shaping; the surface is drawn through it and the walls proved anew',
    });
}

export type ShapedFile = z.infer<ReturnType<typeof shapedSchema>>[number];

const MEASURES = ['thickness', 'width', 'deck', 'bottom', 'rail'] as const;

export function toShaped(file: readonly ShapedFile[] = [], board: BoardSpec, units: Units, say: Say): Measured[] {
  const shaped = file.map((each, i): Measured | undefined => {
    const here = say.at(i);
    const given = MEASURES.filter((name) => each[name] !== undefined);
    if (given.length !== 1) {
      here.error(
        [],
        given.length === 0 ? 'nothing is measured' : `${given.join(' and ')} are measured at once`,
        `one of ${MEASURES.join(', ')} in each line`,
      );
      return undefined;
    }
    const name = given[0]!;
    const value = each[name]!;
    if (name === 'thickness') {
      return {
        kind: 'thickness',
        x: placeAlong(each, board.length, units, here),
        y: each.side ?? 0,
        value,
        off: each.off ?? 'both',
      };
    }
    if (name === 'width') return { kind: 'width', x: placeAlong(each, board.length, units, here), value };
    if (each.chamber === undefined) {
      here.error([name], 'it is not said at which chamber', 'add "chamber" with its number, like R2-05');
      return undefined;
    }
    return { kind: 'wall', chamber: each.chamber, wall: name, value };
  });
  // Places in the list are told, so one that could not be read takes the others' away.
  const all = shaped.filter((each) => each !== undefined);
  if (all.length === shaped.length) checkMeasured(all, board, units, say);
  return all;
}
