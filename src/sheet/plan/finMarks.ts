import type { Stretch } from '../../chamber/stretch.js';
import type { Plan } from '../../plan.js';
import type { Shape } from '../drawing.js';
import { line } from '../primitives.js';

/** Half of the cross at the tip, on the paper, mm. */
const CROSS = 1;

/** Where each fin that is built stands: the line of its base, and a cross at the middle of its tip. */
export function finMarks({ fins }: Plan, { from, to }: Stretch, scale: number): Shape[] {
  const half = CROSS * scale;
  return fins.flatMap(({ standing }) =>
    standing
      .filter(({ front, back }) => (front[0] + back[0]) / 2 >= from && (front[0] + back[0]) / 2 <= to)
      .flatMap(({ front, back, tip: [x, y] }) => [
        line('mark', front, back),
        line('mark', [x - half, y], [x + half, y]),
        line('mark', [x, y - half], [x, y + half]),
      ]),
  );
}
