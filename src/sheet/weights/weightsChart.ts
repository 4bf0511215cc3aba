import type { Point } from '../../contour/point.js';
import { printWeight } from '../../length/weight.js';
import { KG_PER_POUND, type Units } from '../../length/units.js';
import type { Plan } from '../../plan.js';
import type { Drawing, Shape } from '../drawing.js';
import { bandOutline } from '../chart/band.js';
import { dashed } from '../chart/dashed.js';
import { line, polygon, text } from '../primitives.js';
import { frameShapes, roundSteps, scaled, type Frame } from '../chart/frame.js';
import { symbolAt } from '../chart/symbol.js';
import { WEIGHT_WORDS } from './weightsWords.js';

const WIDTH = 160;
const HEIGHT = 100;
/** Of a column, the share that its box takes. */
const BOX = 0.56;
const RING = 1.2;

/** All stages side by side: the likeliest weight and its band, what was foreseen, what was weighed. */
export function weightsChart({ weights, job }: Plan): Drawing {
  const { stages } = weights;
  const weighings = job.weighings ?? [];
  const most = Math.max(
    ...stages.flatMap(({ high, foreseen }) => [high, foreseen.high]),
    ...weighings.map(({ weight }) => weight),
  );
  const column = WIDTH / stages.length;
  const frame: Frame = {
    width: WIDTH,
    height: HEIGHT,
    x: (i) => (i + 0.5) * column,
    y: scaled(0, most * 1.06, HEIGHT),
  };
  const { x, y } = frame;
  const half = (column * BOX) / 2;
  const weighed = weighings.length > 0;
  const shapes = stages.flatMap(({ stage, weight, low, high, foreseen }, i): Shape[] => [
    ...(weighed ? outlineDashed(x(i) - half * 1.3, x(i) + half * 1.3, y(foreseen.low), y(foreseen.high)) : []),
    polygon('web', bandOutline(x(i) - half, x(i) + half, y(low), y(high)), 'light'),
    line('outline', [x(i) - half, y(weight)], [x(i) + half, y(weight)]),
    text(printWeight(weight, job.units), [x(i), y(Math.max(high, weighed ? foreseen.high : 0)) + 2.6], 1.8),
    text(WEIGHT_WORDS.stage[stage], [x(i), -3], 2.5, 'right', { angleInDegrees: 35 }),
  ]);
  const rings = weighings.flatMap((weighing): Shape[] => {
    const at: Point = [x(stages.findIndex(({ stage }) => stage === weighing.stage)), y(weighing.weight)];
    const odd = weights.questioned.some(({ stage, weight }) => stage === weighing.stage && weight === weighing.weight);
    return symbolAt(odd ? 'cross' : 'ring', 'outline', at, RING);
  });
  return {
    id: 'weights',
    title: WEIGHT_WORDS.chart.title,
    isChart: true,
    notes: WEIGHT_WORDS.chart.notes,
    shapes: [...frameShapes(frame, [], weightTicks(0, most, job.units)), ...shapes, ...rings],
  };
}

/** Round weights between two, in whole kilograms or pounds. */
export function weightTicks(low: number, high: number, units: Units, unit = 1) {
  const kg = units === 'mm' ? 1 : KG_PER_POUND;
  return roundSteps(low / kg, high / kg, unit).map((value) => ({
    at: value * kg,
    words: `${Number(value.toFixed(2))} ${units === 'mm' ? 'kg' : 'lb'}`,
  }));
}

function outlineDashed(left: number, right: number, low: number, high: number): Shape[] {
  const outline = bandOutline(left, right, low, high);
  return dashed([...outline, outline[0]!], 2, 1.2);
}
