import { z } from 'zod';
import { KG_PER_POUND, type Units } from '../../length/units.js';
import type { WeighingSpec } from '../spec/finish.js';
import type { Quantities } from '../quantities.js';
import type { Say } from '../mistake/say.js';
import { STAGES } from '../spec/stage.js';

/** How far a shop's scale may be off; common practice, no source. */
const SCALE = { mm: 0.1, in: KG_PER_POUND / 4 } as const;

export function weighingsSchema(q: Quantities) {
  return z
    .array(
      z.strictObject({
        stage: z.enum(STAGES).meta({ description: `when it was weighed: ${STAGES.join(', ')}` }),
        weight: q.weight('what the scale said for the whole board, all its pieces together', {
          least: 0.2,
          most: 300,
          because: 'boards lie in that range',
        }),
        scale: q
          .weight('how far the scale may be off', {
            least: 0.001,
            most: 20,
            because: 'a scale that is off by more is of no use here',
          })
          .optional(),
      }),
    )
    .meta({ description: 'what the scale said as the work went on; later weights are foreseen anew from it' });
}

export type WeighingFile = z.infer<ReturnType<typeof weighingsSchema>>[number];

export function toWeighings(file: readonly WeighingFile[] = [], units: Units, say: Say): WeighingSpec[] {
  return file.map(({ stage, weight, scale = SCALE[units] }, i) => {
    if (scale >= weight) {
      say.error(
        [i, 'scale'],
        'the scale may be off by more than it said',
        'how far it may be off, a little of the weight',
      );
    }
    return { stage, weight, scale };
  });
}
