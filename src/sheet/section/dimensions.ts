import type { Point } from '../../contour/point.js';
import { bare } from '../../length/bare.js';
import { printAs } from '../../length/rounded.js';
import type { Units } from '../../length/units.js';
import type { Shape } from '../drawing.js';
import type { Gap } from '../../view/gap.js';
import { widthOf } from '../lettering.js';
import { line, text } from '../primitives.js';

/** How far a figure's line reaches beyond the surface, mm. */
const REACH = 5;

/** Where a figure stands: its middle and half its size, mm. */
interface Figure {
  readonly x: number;
  readonly y: number;
  readonly wide: number;
}

/**
 * Walls' dimensions, each a line across the wall carried on beyond the surface to its figure; a figure that would meet
 * another stands further out.
 */
export function dimensions(gaps: readonly Gap[], at: (point: Point) => Point, letters: number, units: Units): Shape[] {
  const figures: Figure[] = [];
  return gaps.flatMap(({ from, to, distance }): Shape[] => {
    const [ux, uy] = distance > 0 ? [(to[0] - from[0]) / distance, (to[1] - from[1]) / distance] : [0, 1];
    const words = bare(printAs('there', distance, units));
    const wide = widthOf(words, letters) / 2;
    const clear = Math.abs(ux) > Math.SQRT1_2 ? wide + 1 : letters / 2 + 1;
    let out = REACH;
    const place = (): Figure => {
      const [x, y] = at([to[0] + ux * (out + clear), to[1] + uy * (out + clear)]);
      return { x, y, wide };
    };
    let figure = place();
    for (let i = 0; i < STEPS && figures.some((other) => meet(figure, other, letters)); i++) {
      out += letters + 1;
      figure = place();
    }
    figures.push(figure);
    return [
      line('dimension', at(from), at([to[0] + ux * out, to[1] + uy * out])),
      slash(at(from)),
      slash(at(to)),
      text(words, [figure.x, figure.y], letters, 'centre', { layer: 'dimension' }),
    ];
  });
}

/** Times a figure is moved out before it is left where it is. */
const STEPS = 3;

function meet(a: Figure, b: Figure, letters: number): boolean {
  return Math.abs(a.x - b.x) < a.wide + b.wide && Math.abs(a.y - b.y) < letters + 1;
}

/** The oblique stroke that ends a dimension (ISO 129-1), mm. */
function slash([x, y]: Point): Shape {
  return line('dimension', [x - 1.5, y - 1.5], [x + 1.5, y + 1.5]);
}
