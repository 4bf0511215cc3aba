import words from '../../templates/cutting.json' with { type: 'json' };
import type { Cut, CutSheet, PlacedPart } from '../block/cutPlan.js';
import { stockName } from '../block/cutting.js';
import { printLength } from '../length/length.js';
import { printAs } from '../length/rounded.js';
import type { Plan } from '../plan.js';
import type { Caption, Drawing, Shape } from './drawing.js';
import { widthOf } from './lettering.js';
import { line, polygon, text, type Point } from './primitives.js';
import { say } from './words.js';

/** Letters on the page, mm (ISO 3098-1:2015), and what share of it cuts' and blocks' names have, the largest that there is room for. */
const LETTERS = 2.5;
const CUTS = [0.72, 0.5] as const;
const NAMES = [1.4, 1.2, 1, 0.8, 0.7, 0.6, 0.5] as const;
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
      ...sheet.offcuts.map(({ x, y, length: l, width: w }) => polygon('web', rectangle(x, y, l, w), 'light')),
      ...sheet.cuts.map(({ from, to }) => line('dimension', [from.x, from.y], [to.x, to.y])),
      ...sheet.blanks.flatMap(({ x, y, length: l, width: w, parts, split }): Shape[] => [
        polygon('dimension', rectangle(x, y, l, w)),
        ...(split ? [line('dimension', [split.from.x, split.from.y], [split.to.x, split.to.y])] : []),
        ...parts.filter((part) => parts.length > 1 || isTapered(part)).map(outlineOf),
      ]),
    ],
    captions: [
      ...sheet.cuts.map((cut) => cutNumber(cut, letters, plan.job.blocks)),
      ...sheet.blanks.flatMap(({ parts }) => parts.map((part) => partName(part, letters))),
      ...sheet.offcuts.map(({ id, x, y, length: l, width: w }) =>
        inside(`${id}: ${left(l)} × ${left(w)}`, [x + l / 2, y + w / 2], l, w, letters),
      ),
    ],
  };
}

function isOffcut(plan: Plan, sheet: CutSheet): boolean {
  return plan.job.blocks.stock.some(({ offcut }, i) => offcut && stockName(i) === sheet.stock);
}

type Saw = Plan['job']['blocks'];

/** A cut's number: under the sheet where it begins at that edge, else beside its line. A sheet is drawn no longer than it is. */
function cutNumber({ number, stage, run, from, to }: Cut, letters: number, { trim, kerf }: Saw): Caption {
  const words = String(number);
  const along = run === 'across' ? 'y' : 'x';
  const [low, high] = from[along] <= to[along] ? [from, to] : [to, from];
  const length = high[along] - low[along];
  const isAtEdge = run === 'across' && (stage === 0 || low.y <= trim);
  const at = (off: number, aside: number): Point =>
    along === 'y' ? [low.x + aside, low.y + off] : [low.x + off, low.y + aside];
  const places = CUTS.flatMap((share): Shape[][] => {
    const size = letters * share;
    // Clear of what a letter may have under its line, and of the blanks' edges beside the saw cut.
    const [wide, tall] = [widthOf(words, size) / 2, 0.75 * size];
    const [halfAlong, halfAside] = along === 'y' ? [tall, wide] : [wide, tall];
    const [first, aside] = [halfAlong, halfAside].map((half) => half + 0.1 * size + kerf) as [number, number];
    const steps = Math.floor((length - 2 * first) / size);
    const offs = Array.from({ length: Math.max(0, steps) + 1 }, (_, i) => first + i * size).concat(length - first);
    return [...(isAtEdge ? [at(-first, 0)] : []), ...offs.flatMap((off) => [at(off, aside), at(off, -aside)])].map(
      (spot) => [text(words, spot, size)],
    );
  });
  return { places };
}

const outlineOf = ({ outline }: PlacedPart): Shape =>
  polygon(
    'block',
    outline.map(({ x, y }): Point => [x, y]),
  );

function partName({ id, outline }: PlacedPart, letters: number): Caption {
  const xs = outline.map(({ x }) => x);
  const ys = outline.map(({ y }) => y);
  const middle: Point = [sum(xs) / xs.length, sum(ys) / ys.length];
  return inside(id, middle, Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys), letters);
}

/** Words as large as they fit into a rectangle, level or upright, from its middle outward. */
function inside(words_: string, [x, y]: Point, length: number, width: number, letters: number): Caption {
  const ways = [
    { along: length, across: width, turn: {}, way: [1, 0] as const },
    { along: width, across: length, turn: { angleInDegrees: 90 }, way: [0, 1] as const },
  ];
  const places = NAMES.flatMap((share) =>
    ways.flatMap(({ along, across, turn, way }): Shape[][] => {
      const size = letters * share;
      const free = along - widthOf(words_, size) - 0.8 * size;
      if (free < 0 || across < 1.5 * size) return [];
      return [0, -0.25, 0.25, -0.5, 0.5].map((off) => [
        text(words_, [x + off * free * way[0], y + off * free * way[1]], size, 'centre', turn),
      ]);
    }),
  );
  return { places };
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
