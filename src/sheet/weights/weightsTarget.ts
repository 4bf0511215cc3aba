import type { Point } from '../../contour/point.js';
import { printArealWeight } from '../../length/areal.js';
import { printExactly } from '../../length/exactly.js';
import { printLength } from '../../length/length.js';
import { printAs } from '../../length/rounded.js';
import { MM_PER_INCH } from '../../length/units.js';
import { printWeight } from '../../length/weight.js';
import type { Plan } from '../../plan.js';
import { WALLS, type Steered } from '../../steer/steer.js';
import type { Drawing } from '../drawing.js';
import type { TextBlock, TextPage } from '../pages.js';
import { lineThrough } from '../chart/line.js';
import { dashed } from '../chart/dashed.js';
import { line, text } from '../primitives.js';
import { weightTicks } from './weightsChart.js';
import { frameShapes, roundSteps, scaled, type Frame } from '../chart/frame.js';
import { symbolAt } from '../chart/symbol.js';
import { WEIGHT_WORDS } from './weightsWords.js';
import { say } from '../../words/say.js';

const W = WEIGHT_WORDS.target;
const WIDTH = 160;
const HEIGHT = 90;

/** The trade-off: what the board comes to against its thinnest wall, and where the target lies. */
export function targetChart({ job }: Plan, steered: Steered): Drawing {
  const { units } = job;
  const { aim, asked, reached } = steered;
  const points = steered.curve.flatMap((each) =>
    each.thinnest === undefined ? [] : [{ wall: each.thinnest, value: each[aim] }],
  );
  const values = [...points.map(({ value }) => value), asked, reached];
  const walls = points.map(({ wall }) => wall);
  const room = (list: readonly number[], least: number) => {
    const [low, high] = [Math.min(...list), Math.max(...list)];
    const margin = Math.max(least, (high - low) * 0.1);
    return [low - margin, high + margin] as const;
  };
  const [lowest, highest] = room(values, aim === 'weight' ? 0.1 : 2);
  const [thinnest, thickest] = room(walls.length > 0 ? walls : [0], 0.5);
  const frame: Frame = {
    width: WIDTH,
    height: HEIGHT,
    x: scaled(thinnest, thickest, WIDTH),
    y: scaled(lowest, highest, HEIGHT),
  };
  const at = (wall: number, value: number): Point => [frame.x(wall), frame.y(value)];
  const left =
    aim === 'weight'
      ? weightTicks(lowest, highest, units, 0.1)
      : roundSteps(lowest, highest, units === 'mm' ? 1 : MM_PER_INCH / 16).map((mm) => ({
          at: mm,
          words: printLength(mm, units),
        }));
  const below = roundSteps(thinnest, thickest, units === 'mm' ? 0.5 : MM_PER_INCH / 16).map((mm) => ({
    at: mm,
    words: printLength(mm, units),
  }));
  return {
    id: 'trade-off',
    isChart: true,
    title: W.title,
    notes: W.notes,
    shapes: [
      ...frameShapes(frame, below, left),
      line('outline', ...lineThrough(points.map(({ wall, value }) => at(wall, value)))),
      ...points.flatMap(({ wall, value }) => symbolAt('ring', 'outline', at(wall, value), 0.8)),
      ...dashed([
        [0, frame.y(asked)],
        [WIDTH, frame.y(asked)],
      ]),
      ...(steered.thinnest === undefined ? [] : symbolAt('cross', 'outline', at(steered.thinnest, reached), 2.2)),
      text(W[aim], [0, HEIGHT + 3.5], 2.5, 'left'),
      text(W.thinnest, [WIDTH, -8.5], 2.5, 'right'),
    ],
  };
}

/** What was found, in words: met or not, the walls to set, what stands in the way. */
export function targetPage({ job }: Plan, steered: Steered): TextPage {
  const { units } = job;
  const print = (value: number) =>
    steered.aim === 'weight' ? printWeight(value, units) : printLength(value, units, 'feet');
  const { fill, glass, chambers } = steered.job;
  const cloth = glass?.deck[0] ?? glass?.bottom[0];
  const changed = job.target?.cloths && cloth !== undefined;
  const blocks: TextBlock[] = [
    {
      kind: 'paragraph',
      text: say(steered.met ? W.met : W.missed, { asked: print(steered.asked), reached: print(steered.reached) }),
    },
    { kind: 'heading', text: W.walls },
    { kind: 'pairs', pairs: WALLS.map((wall) => [WEIGHT_WORDS.lever[wall], printExactly(chambers[wall], units)]) },
    {
      kind: 'paragraph',
      text: changed
        ? say(W.choice, { fill: fill.name, cloth: printArealWeight(cloth, units) })
        : say(W.fill, { fill: fill.name }),
    },
    ...(steered.thinnest === undefined
      ? []
      : [
          {
            kind: 'paragraph' as const,
            text: say(W.share, {
              share: `${Math.round(steered.share * 100)} %`,
              thinnest: printAs('there', steered.thinnest, units),
            }),
          },
        ]),
  ];
  const hinders: TextBlock[] =
    steered.hinders.length === 0
      ? []
      : [
          { kind: 'heading', text: W.hinders },
          {
            kind: 'list',
            items: steered.hinders.map(({ lever, at }) =>
              say(W.lever, { lever: WEIGHT_WORDS.lever[lever], at: WEIGHT_WORDS.leverAt[at] }),
            ),
          },
        ];
  return { kind: 'text', title: W.found, blocks: [...blocks, ...hinders] };
}
