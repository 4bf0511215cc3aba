import words from '../../../templates/stock.json' with { type: 'json' };
import type { Point } from '../../contour/point.js';
import { printLength } from '../../length/length.js';
import type { Plan } from '../../plan.js';
import type { InBlank } from '../../stock/inBlank.js';
import { fitFromSide } from '../../view/fitFromSide.js';
import { say, WORDS } from '../../words/say.js';
import type { Drawing } from '../drawing.js';
import { stationsOf } from '../face/poleMarks.js';
import { circle, line, polygon, text } from '../primitives.js';
import { sayShort, shortRadius } from './shortPlaces.js';

const { sheet } = words;
/** Heights are drawn so many times as large, or what comes off would not be seen. */
const STRETCHED = 5;
/** Letters for a board that is drawn at 1 : 20, mm of the board. */
const LETTERS = 50;
/** Stations nearer to the one before than this have no words, mm. */
const APART = 350;

/** Blank and board from the side, cut along the edge of the strip next to the centre; nose on the left. */
export function blankSide(plan: Plan, blank: InBlank): Drawing {
  const { job, board } = plan;
  const { stock, finished } = fitFromSide(board, blank);
  const tall = ([x, z]: Point): Point => [x, STRETCHED * z];
  const lowest = STRETCHED * Math.min(...stock.flat().map(([, z]) => z)) - LETTERS;
  const stations = stationsOf(plan).filter((x, i, all) => i === 0 || x - all[i - 1]! >= APART);
  return {
    id: 'blank-side',
    title: sheet.side.title,
    isChart: true,
    notes: [
      say(sheet.side.notes, { times: STRETCHED }),
      ...blank.short.map((place, i) => sayShort(place, i + 1, blank.isAlike, job.units)),
    ],
    shapes: [
      ...stock.map((points) => polygon('outline', points.map(tall))),
      ...finished.map((points) => polygon('edge', points.map(tall))),
      ...stations.flatMap((x) => [
        line('dimension', [x, lowest], [x, lowest - LETTERS / 2]),
        text(printLength(x, job.units), [x, lowest - 1.2 * LETTERS], LETTERS),
      ]),
      ...blank.short.flatMap((place, i) => {
        const [x, z] = tall([place.at[0], place.at[2]]);
        const radius = shortRadius(place);
        return [circle('keepout', x, z, radius), text(`${i + 1}`, [x + radius + LETTERS / 4, z], LETTERS, 'left')];
      }),
      text(WORDS.nose, [-2 * LETTERS, tall(finished[0]![0]!)[1]], LETTERS, 'right'),
      text(WORDS.tail, [board.length + 2 * LETTERS, lowest + 2 * LETTERS], LETTERS, 'left'),
    ],
  };
}
