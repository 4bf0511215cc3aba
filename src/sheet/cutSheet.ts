import words from '../../templates/cutting.json' with { type: 'json' };
import type { Cut, CutSheet, PlacedPart } from '../block/cutPlan.js';
import { stockName } from '../block/cutting.js';
import { printLength } from '../length/length.js';
import { printAs } from '../length/rounded.js';
import type { Plan } from '../plan.js';
import type { Drawing, Shape } from './drawing.js';
import { widthOf } from './lettering.js';
import { line, polygon, text, type Point } from './primitives.js';
import { say } from './words.js';

/** Letters on the page, and those of cuts beside them, mm. */
const LETTERS = 2.4;
const SMALL = 0.6;
/** How long a sheet can be drawn on the paper of such a shop (A4, Letter), lying, mm; and the scales of ISO 5455 for it. */
const PAGE = { mm: 253, in: 236 } as const;
const SCALES = [1, 2, 5, 10, 20, 50] as const;

/** One sheet as it is cut: blanks with the blocks in them, the cuts numbered in their order, offcuts hatched. `x` along the sheet. */
export function cutSheetDrawing(plan: Plan, sheet: CutSheet): Drawing {
  const { number, foam, length, width } = sheet;
  const longer = Math.max(length, width);
  const letters = LETTERS * (SCALES.find((scale) => longer <= PAGE[plan.job.units] * scale) ?? SCALES.at(-1)!);
  const print = (mm: number) => printLength(mm, plan.job.units);
  const left = (mm: number) => printAs('there', mm, plan.job.units);
  const size = `${print(length)} × ${print(width)}`;
  const stock = isOffcut(plan, sheet) ? words.sheet.offcut : words.sheet.fresh;
  return {
    id: `cut-${number}`,
    title: say(words.sheet.title, { number, foam }),
    notes: [say(words.sheet.notes, { size, stock })],
    shapes: [
      polygon('outline', rectangle(0, 0, length, width)),
      ...sheet.offcuts.flatMap(({ id, x, y, length: l, width: w }): Shape[] => [
        polygon('web', rectangle(x, y, l, w), 'light'),
        inside(`${id}: ${left(l)} × ${left(w)}`, [x + l / 2, y + w / 2], l, w, letters),
      ]),
      ...sheet.cuts.flatMap((cut) => cutShapes(cut, letters, plan.job.blocks.trim)),
      ...sheet.blanks.flatMap(({ x, y, length: l, width: w, parts, split }): Shape[] => [
        polygon('dimension', rectangle(x, y, l, w)),
        ...(split ? [line('dimension', [split.from.x, split.from.y], [split.to.x, split.to.y])] : []),
        ...parts.flatMap((part) => partShapes(part, letters, parts.length > 1 || isTapered(part))),
      ]),
    ],
  };
}

function isOffcut(plan: Plan, sheet: CutSheet): boolean {
  return plan.job.blocks.stock.some(({ offcut }, i) => offcut && stockName(i) === sheet.stock);
}

function cutShapes({ number, stage, run, from, to }: Cut, letters: number, margin: number): Shape[] {
  const small = letters * SMALL;
  const below = run === 'across' && (stage === 0 || from.y <= margin);
  // Below the sheet where the cut begins at that edge, else just behind the cut: a sheet is drawn no longer than it is.
  const at: Point = below ? [from.x, -small] : [from.x + small * 0.4, from.y + small * 0.8];
  return [
    line('dimension', [from.x, from.y], [to.x, to.y]),
    text(String(number), at, small, below ? 'centre' : 'left'),
  ];
}

function partShapes({ id, outline }: PlacedPart, letters: number, drawn: boolean): Shape[] {
  const xs = outline.map(({ x }) => x);
  const ys = outline.map(({ y }) => y);
  const middle: Point = [sum(xs) / xs.length, sum(ys) / ys.length];
  const room = [Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys)] as const;
  return [
    ...(drawn
      ? [
          polygon(
            'block',
            outline.map(({ x, y }): Point => [x, y]),
          ),
        ]
      : []),
    inside(id, middle, ...room, letters * 1.3),
  ];
}

/** Words as large as they fit into a rectangle, upright where that is larger. */
function inside(words_: string, at: Point, length: number, width: number, most: number): Shape {
  const fits = (l: number, w: number) => Math.min(most, (0.92 * l) / widthOf(words_, 1), 0.6 * w);
  const [level, upright] = [fits(length, width), fits(width, length)];
  return upright > level * 1.2
    ? text(words_, at, upright, 'centre', { angleInDegrees: 90 })
    : text(words_, at, level, 'centre');
}

function isTapered({ outline }: PlacedPart): boolean {
  const [a, b, c, d] = outline.map(({ x, y }) => [x, y] as const) as [Point, Point, Point, Point];
  const level = (p: Point, q: Point) => Math.min(Math.abs(p[0] - q[0]), Math.abs(p[1] - q[1])) < 1e-6;
  return !(level(a, b) && level(b, c) && level(c, d) && level(d, a));
}

function rectangle(x: number, y: number, length: number, width: number): Point[] {
  return [
    [x, y],
    [x + length, y],
    [x + length, y + width],
    [x, y + width],
  ];
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}
