import words from '../../../templates/fin.json' with { type: 'json' };
import { polygonAround } from '../../contour/around.js';
import type { Point } from '../../contour/point.js';
import { turned } from '../../contour/turned.js';
import type { BuiltFin } from '../../fin/finOf.js';
import { printFine } from '../../length/fine.js';
import type { Units } from '../../length/units.js';
import { say } from '../../words/say.js';
import type { FigurePage } from '../pages.js';
import type { Shape } from '../drawing.js';
import { line, polygon, text } from '../primitives.js';

const { sled: said } = words;
const LETTERS = 5;
/** The sled's board, its blocks along the blank, and the drum, mm. */
const BOARD = 12;
const BLOCK = 14;
const BEYOND = 30;
const DRUM = 18;

/** The blank on the sled at the last pass of each side, seen from the side, one below the other. */
export function sledFigure(fin: BuiltFin, units: Units): FigurePage {
  const { spec, sled } = fin;
  const title = say(said.figure, { name: spec.name });
  const tall = 2 * DRUM + sled.sides.at(-1)!.opening + BOARD + 5 * LETTERS;
  return {
    kind: 'figure',
    title,
    drawing: {
      id: `fin-${fin.index + 1}-sled`,
      title,
      notes: [],
      shapes: sled.sides.flatMap((_, i) => onSled(fin, i, -i * tall, units)),
    },
    notes: [say(said.figureNote, { depth: printFine(spec.depth, units) })],
  };
}

function onSled({ spec, sled, blank }: BuiltFin, i: number, down: number, units: Units): Shape[] {
  const { low, sides } = sled;
  const { high, opening } = sides[i]!;
  const { depth } = spec;
  const angle = Math.asin((high - low) / depth);
  const at = (x: number, z: number): Point => [x, z + down];
  const under = (s: number): Point => turned([s, 0], angle, [0, low + down]);
  const [begin, end] = [under(-blank.below), under(depth + blank.above)];
  const edge = under(depth);
  const box = (x: number, z: number, width: number, height: number) =>
    polygon('outline', [at(x, z), at(x + width, z), at(x + width, z + height), at(x, z + height)]);
  const fine = (mm: number) => printFine(mm, units);
  const sideOf = sides.length === 1 ? said.only : i === 0 ? said.first : said.second;
  const left = -blank.below - BEYOND;
  const right = depth + blank.above + BEYOND;
  return [
    box(left, -BOARD, right - left, BOARD),
    polygon('outline', [at(0, 0), at(BLOCK, 0), at(BLOCK, low), at(0, low)], 'medium'),
    polygon(
      'outline',
      [at(edge[0], 0), at(edge[0] + BLOCK, 0), at(edge[0] + BLOCK, high), at(edge[0], high)],
      'medium',
    ),
    polygon('outline', [begin, end, [end[0], opening + down], [begin[0], opening + down]], 'light'),
    polygon('outline', polygonAround(at(depth / 3, opening + DRUM), DRUM, 72)),
    text(said.drum, at(depth / 3, opening + DRUM), LETTERS),
    line('dimension', at(right - 8, 0), at(right - 8, opening)),
    line('dimension', at(end[0], opening), at(right - 4, opening)),
    text(fine(opening), at(right, opening / 2), LETTERS, 'left'),
    text(fine(low), at(BLOCK + 3, low / 2), LETTERS, 'left'),
    text(fine(high), at(edge[0] - 3, high / 3), LETTERS, 'right'),
    text(said.base, at(0, -BOARD - LETTERS), LETTERS),
    text(said.tip, at(edge[0], -BOARD - LETTERS), LETTERS),
    text(say(said.figureSide, { side: sideOf }), at(depth * 0.75, opening + DRUM), LETTERS),
  ];
}
