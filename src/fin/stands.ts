import { outlineOf as keepOutOutline } from '../chamber/keepOut.js';
import type { Point } from '../contour/point.js';
import { isInside } from '../contour/inside.js';
import type { Job } from '../job/job.js';
import type { FinSpec } from '../job/spec/finish.js';

/** One fin where it stands: board frame in plan, mm. */
export interface Standing {
  readonly side: 'centre' | 'right' | 'left';
  /** The ends of its base, and the middle of its tip. */
  readonly front: Point;
  readonly back: Point;
  readonly tip: Point;
  /** The keep-out that its whole base lies in; absent where none holds it. */
  readonly keepOut?: string;
}

/** Each fin of a pair, or the one: turned by its toe, leaning by its cant. */
export function standingOf(fin: FinSpec, keepOuts: Job['keepOuts']): Standing[] {
  const { stands } = fin.build!;
  const sides = stands.side === 'both' ? (['right', 'left'] as const) : [stands.side];
  return sides.map((side): Standing => {
    const out = side === 'left' ? -1 : 1;
    const at = (along: number, across: number): Point => [
      fin.x + along * Math.cos(stands.toe) - across * Math.sin(stands.toe),
      out * (stands.away + along * Math.sin(stands.toe) + across * Math.cos(stands.toe)),
    ];
    const half = [fin.base / 2, fin.thickness / 2] as const;
    const corners = [-1, 1].flatMap((along) => [-1, 1].map((across) => at(along * half[0], across * half[1])));
    const holding = keepOuts.find((keepOut) => {
      const outline = keepOutOutline(keepOut);
      return keepOut.depth?.from !== 'deck' && corners.every(([x, y]) => isInside(outline, x, y));
    });
    return {
      side,
      front: at(-half[0], 0),
      back: at(half[0], 0),
      tip: at(fin.build!.outline.rake, fin.depth * Math.sin(stands.cant)),
      ...(holding && { keepOut: holding.name }),
    };
  });
}
