import words from '../../../templates/templates.json' with { type: 'json' };
import type { Board } from '../../board/board.js';
import type { Point } from '../../contour/point.js';
import type { Job } from '../../job/job.js';
import { printLength } from '../../length/length.js';
import { outlineInPlan, sideOf } from '../../view/outlineInPlan.js';
import { say } from '../../words/say.js';
import type { Caption, Drawing } from '../drawing.js';
import { legendOf } from '../legendOf.js';
import { line, polygon, text } from '../primitives.js';
import { templateStations } from './stations.js';
import { alongMark, isNew, LETTERS } from './marks.js';

/** The sides a template serves: both where they are alike. */
export type TemplateSide = 'both' | 'right' | 'left';

/** Half the outline at full size, nose on the left, its straight edge along the centreline at `y` = 0. */
export function outlineTemplate(board: Board, { units, chambers }: Job, side: TemplateSide): Drawing {
  const { length, surface } = board;
  const of = side === 'left' ? 'left' : 'right';
  const curve = sideOf(outlineInPlan(board, { from: 0, to: length }), of).map(([x, y]): Point => [x, Math.abs(y)]);
  const { outer, inner } = surface.outlines[of === 'left' ? 0 : 1];
  const widest = Array.from(board.grid.xs).reduce((a, b) => (outer(b) > outer(a) ? b : a));
  const print = (mm: number) => printLength(mm, units);
  const half = words.half[side];
  const marks: readonly (readonly [x: number, said: string])[] = [
    [widest, say(words.outline.widest, { half: print(outer(widest)), at: print(widest) })],
    ...(chambers.solidNose > 0 ? [[chambers.solidNose, words.outline.solidNose] as const] : []),
    ...(chambers.solidTail > 0 ? [[length - chambers.solidTail, words.outline.solidTail] as const] : []),
    ...templateStations(length, units).map(
      (x) => [x, say(words.outline.station, { at: print(x), half: print(outer(x)) })] as const,
    ),
  ];
  const title = say(words.outline.title, { half });
  return {
    id: side === 'both' ? 'outline' : `outline-${side}`,
    title,
    name: title,
    notes: [words.outline.notes[side]],
    legend: legendOf('template'),
    units,
    shapes: [polygon('cut', curve.filter(isNew)), ...marks.map(([x]) => line('mark', [x, inner(x)], [x, outer(x)]))],
    captions: [
      ...marks.map(([x, said]): Caption => alongMark(said, x, inner(x), outer(x))),
      inside(`${words.nose} · ${half}`, [30, 60, 90, 130, 180, 240], 'left'),
      inside(
        words.tail,
        [30, 60, 90, 130, 180].map((off) => length - off),
        'right',
      ),
    ],
  };
}

/** Words near the straight edge. */
function inside(said: string, places: readonly number[], align: 'left' | 'right'): Caption {
  return { places: places.map((x) => [text(said, [x, LETTERS], LETTERS, align)]) };
}
