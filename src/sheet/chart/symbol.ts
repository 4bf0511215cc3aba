import type { Point } from '../../contour/point.js';
import { symbol, symbolCircle, symbolTimes, type SymbolType } from 'd3-shape';
import type { Layer, Shape } from '../drawing.js';
import { circle, line } from '../primitives.js';
import { recorded } from './recorder.js';

const SYMBOLS = { ring: symbolCircle, cross: symbolTimes } as const satisfies Record<string, SymbolType>;

/** A symbol that marks a value on a chart, reaching so far from its middle along either axis, mm. */
export function symbolAt(kind: keyof typeof SYMBOLS, layer: Layer, [x, y]: Point, reach: number): Shape[] {
  const { runs, circles } = recorded((context) => symbol(SYMBOLS[kind], 1).context(context)());
  const scale = reach / Math.max(...runs.flat(2), ...circles.map(({ radius }) => radius));
  return [
    ...runs.map((run) => line(layer, ...run.map(([dx, dy]): Point => [x + scale * dx, y + scale * dy]))),
    ...circles.map(({ radius }) => circle(layer, x, y, scale * radius)),
  ];
}
