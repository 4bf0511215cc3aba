import { turned } from '../../contour/turned.js';
import type { Point } from '../../contour/point.js';
import type { Plan } from '../../plan.js';
import type { FaceOnBench } from './faceOnBench.js';
import type { Shape } from '../drawing.js';
import type { MirroredRow } from '../mirror.js';
import { line } from '../primitives.js';

/**
 * How far the lines of a cross stand out of the cut, mm, and how far they reach into it at most, as a share of its
 * size: the middle is for its number.
 */
const OUT = 5;
const INTO = { most: 14, share: 0.2 } as const;

/**
 * Where each shared guide is set: the ends of a cross through its middle, along its length and across it, to be met by
 * the centre lines on the guide. Which guide it is stands with the chamber's depth.
 */
export function guideMarks(plan: Plan, { row }: MirroredRow, bench: FaceOnBench): Shape[] {
  const held = new Set(plan.chambers.filter((chamber) => chamber.row === row.id).map(({ id }) => id));
  const cuts = new Map(plan.routing.guides.map(({ id, cut }) => [id, cut]));
  return plan.routing.settings
    .filter(({ chamber }) => held.has(chamber))
    .flatMap(({ guide, s, z, tiltInDegrees }): Shape[] => {
      const { length, height } = cuts.get(guide)!;
      const turn = (tiltInDegrees * Math.PI) / 180;
      const at = (u: number, v: number): Point => bench.point(...turned([u, v], turn, [s, z]));
      const into = (size: number) => Math.min(INTO.most, INTO.share * size);
      return [1, -1].flatMap((end) => [
        line('mark', at(end * (length / 2 + OUT), 0), at(end * (length / 2 - into(length)), 0)),
        line('mark', at(0, end * (height / 2 + OUT)), at(0, end * (height / 2 - into(height)))),
      ]);
    });
}
