import { columnsOf } from '../table.js';
import type { Point } from '../../contour/point.js';
import { printLength } from '../../length/length.js';
import { MM_PER_FOOT } from '../../length/units.js';
import type { Plan } from '../../plan.js';
import type { StaggerCompared } from '../../steer/stagger.js';
import type { Stiffness } from '../../weigh/stiffness.js';
import type { Drawing } from '../drawing.js';
import type { Cell, TablePage } from '../pages.js';
import { lineThrough } from '../chart/line.js';
import { dashed } from '../chart/dashed.js';
import { line, text } from '../primitives.js';
import { frameShapes, roundSteps, scaled, type Frame } from '../chart/frame.js';
import { symbolAt } from '../chart/symbol.js';
import { WEIGHT_WORDS } from './weightsWords.js';
import { say } from '../../words/say.js';

const W = WEIGHT_WORDS.stiffness;
const WIDTH = 160;
const HEIGHT = 90;

/** How stiff the board is along its length, as a share of the solid one: as planned and with its webs in line. */
export function stiffnessChart({ board, job }: Plan, { asPlanned, inLine }: StaggerCompared): Drawing {
  const { units } = job;
  const least = Math.min(...[asPlanned, inLine].flatMap(({ places }) => places.map(({ share }) => share)));
  const low = Math.floor(least * 10 - 1e-9) / 10;
  const frame: Frame = {
    width: WIDTH,
    height: HEIGHT,
    x: scaled(0, board.length, WIDTH),
    y: scaled(low, 1.02, HEIGHT),
  };
  const curve = ({ places }: Stiffness): Point[] =>
    lineThrough(places.map(({ x, share }): Point => [frame.x(x), frame.y(share)]));
  const { weakest } = asPlanned;
  const along = roundSteps(0, board.length, units === 'mm' ? 500 : MM_PER_FOOT);
  return {
    id: 'stiffness',
    title: W.title,
    isChart: true,
    notes: W.notes,
    shapes: [
      ...frameShapes(
        frame,
        along.map((at) => ({ at, words: printLength(at, units, 'feet') })),
        roundSteps(low, 1, 0.05).map((at) => ({ at, words: `${Math.round(at * 100)} %` })),
      ),
      ...dashed(curve(inLine), 1.6, 0.9),
      line('outline', ...curve(asPlanned)),
      ...symbolAt('ring', 'mark', [frame.x(weakest.x), frame.y(weakest.share)], 1.4),
      text(
        say(W.weakest, { x: printLength(weakest.x, units, 'feet') }),
        [frame.x(weakest.x), Math.max(3, frame.y(weakest.share) - 5)],
        2.5,
      ),
      text(W.share, [0, HEIGHT + 3.5], 2.5, 'left'),
    ],
  };
}

/** The same in figures, staggered beside not staggered. */
export function stiffnessTable({ job }: Plan, { asPlanned, inLine }: StaggerCompared): TablePage {
  const both = (title: string, cell: (each: Stiffness) => Cell) => ({
    kind: 'row' as const,
    cells: [title, cell(asPlanned), cell(inLine)],
  });
  const rounded = (value: number, digits: number): Cell => ({ value, text: value.toFixed(digits) });
  return {
    kind: 'table',
    title: W.figuresTitle,
    notes: W.caution,
    columns: columnsOf([W.columns.what, 'text'], [W.columns.asPlanned, 'number'], [W.columns.inLine, 'number']),
    rows: [
      both(W.weakestAt, ({ weakest }) => ({ value: weakest.x, text: printLength(weakest.x, job.units) })),
      both(W.weakestStiffness, ({ weakest }) => rounded(weakest.stiffness / 1e9, 1)),
      both(W.weakestShare, ({ weakest }) => rounded(100 * weakest.share, 1)),
      both(W.strain, ({ weakest }) => rounded(1e6 * weakest.strain, 0)),
      both(W.sag, ({ sag }) => rounded(sag, 2)),
      both(W.unevenness, ({ unevenness }) => rounded(100 * unevenness, 1)),
    ],
  };
}
