import type { BoardSpec } from '../spec/board.js';
import { z } from 'zod';
import type { Units } from '../../length/units.js';
import type { Range, TargetSpec } from '../spec/finish.js';
import type { Quantities } from '../quantities.js';
import type { Say } from '../mistake/say.js';
import { alongSchema, placeAlong } from './along.js';
import { CLOTH_BOUNDS } from './glass.js';
import type { FindMaterial } from './materials.js';

const WALLS = ['deckSkin', 'bottomSkin', 'railWall', 'web'] as const;

export function targetSchema(q: Quantities) {
  const bounds = {
    least: 1,
    most: 300,
    because: 'a thinner wall does not survive the router, a thicker one leaves no chamber',
  };
  const range = (what: string) =>
    z
      .tuple([q.length('the least', bounds), q.length('the most', bounds)])
      .meta({ description: `${what}: the least and the most that you would have` })
      .optional();
  return z
    .strictObject({
      weight: q
        .weight('what the finished board is to weigh', { least: 0.5, most: 300, because: 'boards lie in that range' })
        .optional(),
      balance: z
        .strictObject(alongSchema(q, 'where it is to balance,'))
        .meta({ description: 'or where the finished board is to balance' })
        .optional(),
      deckSkin: range('between chamber and deck'),
      bottomSkin: range('between chamber and bottom'),
      railWall: range('between chamber and rail'),
      web: range('between two chambers of a row'),
      fills: z
        .array(z.string())
        .min(1)
        .meta({ description: 'foams that you could get for the blocks, by name' })
        .optional(),
      cloths: z
        .array(q.areal('a cloth', CLOTH_BOUNDS))
        .min(1)
        .meta({ description: 'cloths that you would take for every layer' })
        .optional(),
    })
    .meta({ description: 'what the board is to come to, and what may be changed to get there' });
}

export type TargetFile = z.infer<ReturnType<typeof targetSchema>>;

export function toTarget(
  file: TargetFile,
  board: BoardSpec,
  material: FindMaterial,
  units: Units,
  say: Say,
): TargetSpec {
  const { weight, balance, fills, cloths } = file;
  if ((weight === undefined) === (balance === undefined)) {
    const what = weight === undefined ? 'it asks for nothing' : 'it asks for a weight and a balance';
    say.error([], what, 'weight: and the finished weight, or balance: {at: …}, one of them');
  }
  const walls = WALLS.flatMap((wall): [string, Range][] => {
    const range = file[wall];
    if (!range) return [];
    if (range[0] > range[1]) say.error([wall], 'the least is more than the most', 'the least first: [3/8 in, 3/4 in]');
    return [[wall, range]];
  });
  return {
    ...(weight !== undefined && { weight }),
    ...(balance && { balance: placeAlong(balance, board.length, units, say.at('balance')) }),
    ...Object.fromEntries(walls),
    ...(fills && { fills: fills.map((name, i) => material(name, ['fills', i], say)) }),
    ...(cloths && { cloths }),
  };
}
