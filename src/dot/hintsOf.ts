import type { Chamber } from '../chamber/chamber.js';
import type { Hints } from '../kept/hints.js';
import type { Layup } from '../layup/layup.js';
import type { Glue } from './dot.js';
import { planeOf } from './planned.js';

interface Planned {
  readonly chambers: readonly Chamber[];
  readonly glue: Glue;
  readonly layup: Pick<Layup, 'joints'>;
}

/** What a plan knows that a plan on the same surface may begin its searches from. */
export function hintsOf({ chambers, glue, layup }: Planned): Hints {
  const planes = new Map(layup.joints.map((joint) => [joint.id, planeOf(joint)]));
  return {
    thin: new Map(chambers.map(({ id, at }) => [id, at])),
    margins: glue.dots.flatMap(({ joint, s, z, diameter, margin }) => {
      const plane = planes.get(joint);
      return plane === undefined ? [] : [{ plane, at: [s, z] as const, diameter, margin }];
    }),
  };
}
