import type { Point } from '../../contour/point.js';
import words from '../../../templates/cutting.json' with { type: 'json' };
import type { Cut, CutSheet, PlacedPart } from '../../block/cut/cutPlan.js';
import { stockName } from '../../block/cut/cutting.js';
import { printLength } from '../../length/length.js';
import { printAs } from '../../length/rounded.js';
import type { Plan } from '../../plan.js';
import type { Caption, Drawing, Shape } from '../drawing.js';
import type { PageSize } from '../pages.js';
import { SMALLEST_LETTERS, widthOf } from '../lettering.js';
import { line, polygon, text } from '../primitives.js';
import { say } from '../../words/say.js';

/**
 * Letters on the page of the numbers of cuts and of the names of blocks, mm, the largest that there is room for (ISO
 * 3098-1:2015).
 */
const CUTS = [3.5, 2.5, SMALLEST_LETTERS] as const;
const NAMES = [3.5, 3, 2.5, 2, SMALLEST_LETTERS] as const;
/** The paper of a shop with such units, where none is named: A4 (ISO 216) and Letter (ASME Y14.1), upright, mm. */
const USUAL = { mm: { width: 210, height: 297 }, in: { width: 215.9, height: 279.4 } } as const;
/**
 * What frame and air, title block and notes, and the numbers outside a sheet leave it of a lying page's length and
 * height, mm.
 */
const TAKEN = { length: 44, numbers: 8, height: 86 } as const;
/** Scales of ISO 5455. */
const SCALES = [1, 2, 5, 10, 20, 50] as const;

/** What is drawn narrower than this has no room for its name and the numbers of its cuts, mm on the page. */
const NARROWEST = 4.5;
/**
 * Parts of a sheet end, where they can, no nearer to a blank's end, and leave it in one of them long enough for its
 * name, mm on the page; places that are tried.
 */
const SLIVER = 5;
const NAMED = 15;
/** A cut shorter than this is one across a narrow blank, mm on the page. */
const SHORT = 6;
/** A block this many times as long as the letters of a number has room for its own name beside that. */
const WITH_NAME = 8;
const PLACES = 60;

/**
 * One sheet as it is cut: blanks with the blocks in them, the cuts numbered in their order, offcuts hatched; where
 * these would be too small on a page, the whole without names and numbers, and parts of it that have them. `x` along
 * the sheet.
 */
export function cutSheetDrawings(plan: Plan, sheet: CutSheet, page: PageSize = USUAL[plan.job.units]): Drawing[] {
  const { units } = plan.job;
  const whole = scaleFor(Math.max(sheet.length, sheet.width), page.height - TAKEN.length);
  const larger = SCALES.filter((scale) => scale < whole && isLegible(sheet, scale)).at(-1);
  if (larger === undefined || isLegible(sheet, whole)) return [drawingOf(plan, sheet, whole)];
  const windows = windowsOn(sheet, page, larger);
  if (windows.length === 1) return [drawingOf(plan, sheet, larger)];
  const print = (mm: number) => printLength(mm, units);
  const { id, title, notes, shapes, captions } = drawingOf(plan, sheet, whole);
  const bare = {
    id,
    title,
    notes: [...notes, words.sheet.inParts],
    shapes,
    captions: captions!.slice(-sheet.offcuts.length || captions!.length),
  };
  return [
    bare,
    ...windows.map((window, i): Drawing => {
      const part = drawingOf(plan, seenIn(window, sheet), larger, window);
      const at = { part: i + 1, parts: windows.length, x: print(window.x), y: print(window.y) };
      return {
        ...part,
        id: `${id}-${i + 1}`,
        title: say(words.sheet.part, { title, ...at }),
        notes: [say(words.sheet.partFrom, at)],
        shapes: [...part.shapes.slice(1), polygon('joint', rectangle(window.x, window.y, window.length, window.width))],
      };
    }),
  ];
}

/** Whether every block's name and the numbers of its cuts have room at a scale. */
function isLegible({ blanks }: CutSheet, scale: number): boolean {
  return blanks.every(
    ({ length, width, parts }) =>
      Math.min(length, width) / scale >= NARROWEST &&
      parts.every((part) => [...partName(part, scale).places].length > 1),
  );
}

const scaleFor = (mm: number, page: number): number => SCALES.find((scale) => mm <= page * scale) ?? SCALES.at(-1)!;

/** A part of a sheet, mm. */
interface Window {
  readonly x: number;
  readonly y: number;
  readonly length: number;
  readonly width: number;
}

/**
 * Parts of a sheet, side by side from its corner, in which something is cut that no other shows; they end beside the
 * blanks where they can.
 */
function windowsOn(sheet: CutSheet, page: PageSize, scale: number): Window[] {
  const { length, blanks } = sheet;
  const most = (page.height - TAKEN.length - TAKEN.numbers) * scale;
  const high = (page.width - TAKEN.height) * scale;
  const sides = (begin: 'x' | 'y', size: 'length' | 'width', some: readonly Window[]) =>
    some.map((blank): Point => [blank[begin], blank[begin] + blank[size]]);
  const all = stretches(length, most, sides('x', 'length', blanks), scale).flatMap(([x, end]) => {
    const column = { x, y: 0, length: end - x, width: sheet.width };
    const own = blanks.filter((blank) => common(column, blank));
    return stretches(sheet.width, high, sides('y', 'width', own), scale).map(([y, top]): Window => ({
      ...column,
      y,
      width: top - y,
    }));
  });
  const seen = all.map((window) => seenIn(window, sheet));
  const isNeeded = seen.map((each) => each.blanks.length > 0);
  for (const { number } of sheet.cuts) {
    const where = seen.map(({ cuts }) => cuts.some((cut) => cut.number === number));
    if (!where.some((has, i) => has && isNeeded[i])) isNeeded[where.indexOf(true)] = true;
  }
  return all.filter((_, i) => isNeeded[i]);
}

/**
 * A length in stretches of no more than `most`, each ended somewhere in its second half: where the fewest blanks would
 * have no room for name or number, then where it crosses the least, then as late as can be.
 */
function stretches(length: number, most: number, crossed: readonly Point[], scale: number): Point[] {
  const isUnnamed = (one: number, other: number) =>
    Math.min(one, other) < SLIVER * scale || Math.max(one, other) < NAMED * scale;
  const harmAt = (at: number): number =>
    crossed
      .filter(([from, to]) => at > from && at < to)
      .reduce((harm, [from, to]) => harm + (isUnnamed(at - from, to - at) ? crossed.length : 1), 0);
  const ends: Point[] = [];
  for (let from = 0; from < length; from = ends.at(-1)![1]) {
    const late = Array.from({ length: PLACES }, (_, i) => from + most * (1 - i / PLACES / 2));
    const places = [...late, ...crossed.map(([, end]) => end)].filter(
      (at) => at > from + most / 2 && at <= from + most,
    );
    const least = Math.min(...places.map(harmAt));
    const last = Math.max(...places.filter((at) => harmAt(at) === least));
    ends.push([from, from + most >= length ? length : last]);
  }
  return ends;
}

/** What two rectangles share. */
function common(a: Window, b: Window): Window | undefined {
  const [x, y] = [Math.max(a.x, b.x), Math.max(a.y, b.y)];
  const length = Math.min(a.x + a.length, b.x + b.length) - x;
  const width = Math.min(a.y + a.width, b.y + b.width) - y;
  return length > 0 && width > 0 ? { x, y, length, width } : undefined;
}

/** A sheet as it is seen in a part of it. */
function seenIn(window: Window, sheet: CutSheet): CutSheet {
  const clipped = <T extends Window>(things: readonly T[]): T[] =>
    things.flatMap((thing) => {
      const seen = common(window, thing);
      return seen ? [{ ...thing, ...seen }] : [];
    });
  const within = (value: number, from: number, size: number) => Math.min(from + size, Math.max(from, value));
  const onto = ({ x, y }: { readonly x: number; readonly y: number }) => ({
    x: within(x, window.x, window.length),
    y: within(y, window.y, window.width),
  });
  return {
    ...sheet,
    offcuts: clipped(sheet.offcuts),
    blanks: clipped(sheet.blanks).map((blank) => {
      const parts = blank.parts.map((part) => ({ ...part, outline: part.outline.map(onto) }));
      const { split, ...rest } = blank;
      // A slanting cut is drawn where all of it is seen.
      const isSeen = split && [split.from, split.to].every((end) => onto(end).x === end.x && onto(end).y === end.y);
      return { ...rest, parts, ...(isSeen && { split }) };
    }),
    cuts: sheet.cuts.flatMap((cut) => {
      const [from, to] = [onto(cut.from), onto(cut.to)];
      const isIn = cut.run === 'along' ? from.y === cut.from.y : from.x === cut.from.x;
      return isIn && Math.hypot(to.x - from.x, to.y - from.y) > 0 ? [{ ...cut, from, to }] : [];
    }),
  };
}

/**
 * @param window the part of the sheet that is seen: what goes on beyond it need not be named, and no size of it is said
 */
function drawingOf(plan: Plan, sheet: CutSheet, scale: number, window?: Window): Drawing {
  const { number, foam, length, width } = sheet;
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
      ...mostBoundFirst([
        ...shortestFirst(sheet.cuts).map((cut) => cutNumber(cut, sheet, scale, plan.job.blocks)),
        ...sheet.blanks.flatMap(({ parts }) =>
          parts.map((part) => ({ ...partName(part, scale), optional: window !== undefined && isAtEdge(part, window) })),
        ),
      ]),
      ...sheet.offcuts.map(({ id, x, y, length: l, width: w }) => ({
        ...inside(window ? [id] : [`${id}: ${left(l)} × ${left(w)}`, id], [x + l / 2, y + w / 2], [l, w], scale),
        optional: window !== undefined,
      })),
    ],
  };
}

/** What has few places goes before what has many. */
const mostBoundFirst = (captions: readonly Caption[]): Caption[] =>
  captions.toSorted((a, b) => [...a.places].length - [...b.places].length);

/** Whether a block reaches the edge of what is seen, and so perhaps beyond it. */
function isAtEdge({ outline }: PlacedPart, { x, y, length, width }: Window): boolean {
  return outline.some((at) => at.x <= x || at.y <= y || at.x >= x + length || at.y >= y + width);
}

function isOffcut(plan: Plan, sheet: CutSheet): boolean {
  return plan.job.blocks.stock.some(({ offcut }, i) => offcut && stockName(i) === sheet.stock);
}

type Saw = Plan['job']['blocks'];

/** A long cut's number has room elsewhere. */
function shortestFirst(cuts: readonly Cut[]): Cut[] {
  const lengthOf = ({ from, to }: Cut) => Math.hypot(to.x - from.x, to.y - from.y);
  return cuts.toSorted((a, b) => lengthOf(a) - lengthOf(b) || a.number - b.number);
}

/**
 * A cut's number: under the sheet where it begins at that edge, else beside its line; behind its end where an offcut
 * is. A sheet is drawn no longer than it is.
 */
function cutNumber(cut: Cut, sheet: CutSheet, scale: number, { trim, kerf }: Saw): Caption {
  const { number, stage, run, from, to } = cut;
  const { offcuts } = sheet;
  const words = String(number);
  const along = run === 'across' ? 'y' : 'x';
  const [low, high] = from[along] <= to[along] ? [from, to] : [to, from];
  const length = high[along] - low[along];
  const isOnEdge = run === 'across' && (stage === 0 || low.y <= trim);
  // Over a cut across a column there may be another piece, under it is what it cuts.
  const sides = along === 'x' ? [-1, 1] : [1, -1];
  const at = (off: number, aside: number): Point =>
    along === 'y' ? [low.x + aside, low.y + off] : [low.x + off, low.y + aside];
  const placesAs = (size: number): Shape[][] => {
    // Clear of what a letter may have under its line, and of the blanks' edges beside the saw cut.
    const [wide, tall] = [widthOf(words, size) / 2, 0.75 * size];
    const [halfAlong, halfAside] = along === 'y' ? [tall, wide] : [wide, tall];
    const [first, aside] = [halfAlong, halfAside].map((half) => half + 0.1 * size + kerf) as [number, number];
    const steps = Math.floor((length - 2 * first) / size);
    const offs =
      steps < 0 ? [length / 2] : Array.from({ length: steps + 1 }, (_, i) => first + i * size).concat(length - first);
    const spots = [
      ...(isOnEdge ? [at(-first, 0)] : []),
      ...offs.flatMap((off) => sides.map((side) => at(off, side * aside))),
    ];
    const behind = [at(length + first, 0), at(-first, 0)].filter(([x, y]) => offcuts.some((each) => isIn(each, x, y)));
    // Beside a short cut there is room for the block's name only.
    const all = length < SHORT * scale ? [...behind, ...spots] : [...spots, ...behind];
    return all.map((spot) => [text(words, spot, size)]);
  };
  const room = roomBeside(cut, sheet, kerf) / scale;
  const sizes = CUTS.filter((letters, i) => room >= WITH_NAME * letters || i === CUTS.length - 1);
  return { places: sizes.flatMap((letters) => placesAs(letters * scale)) };
}

/** How long the shortest block at a cut is, mm: a number there leaves its name room. */
function roomBeside({ from, to }: Cut, { blanks }: CutSheet, kerf: number): number {
  const isAt = (low: number, high: number, a: number, b: number) =>
    Math.max(a, b) > low - kerf && Math.min(a, b) < high + kerf;
  const beside = blanks
    .flatMap(({ parts }) => parts)
    .map(({ outline }) => boxOf(outline))
    .filter(({ x, y, length, width }) => isAt(x, x + length, from.x, to.x) && isAt(y, y + width, from.y, to.y));
  return Math.min(...beside.map(({ length, width }) => Math.max(length, width)));
}

function isIn({ x, y, length, width }: Window, atX: number, atY: number): boolean {
  return atX > x && atX < x + length && atY > y && atY < y + width;
}

const outlineOf = ({ outline }: PlacedPart): Shape =>
  polygon(
    'block',
    outline.map(({ x, y }): Point => [x, y]),
  );

function partName({ id, outline }: PlacedPart, scale: number): Caption {
  const middle: Point = [
    sum(outline.map(({ x }) => x)) / outline.length,
    sum(outline.map(({ y }) => y)) / outline.length,
  ];
  const { length, width } = boxOf(outline);
  return inside([id], middle, [length, width], scale);
}

function boxOf(outline: PlacedPart['outline']): Window {
  const [xs, ys] = [outline.map(({ x }) => x), outline.map(({ y }) => y)];
  const [x, y] = [Math.min(...xs), Math.min(...ys)];
  return { x, y, length: Math.max(...xs) - x, width: Math.max(...ys) - y };
}

/**
 * Words as large as they fit into a rectangle, level or upright, from its middle outward, the first of them where they
 * fit; where none fit anywhere, the last in its middle.
 */
function inside(
  ways: readonly string[],
  [x, y]: Point,
  [length, width]: readonly [number, number],
  scale: number,
): Caption {
  const turns = [
    { along: length, across: width, turn: {}, way: [1, 0] as const },
    { along: width, across: length, turn: { angleInDegrees: 90 }, way: [0, 1] as const },
  ];
  const places = ways.flatMap((words) =>
    NAMES.flatMap((letters) =>
      turns.flatMap(({ along, across, turn, way }): Shape[][] => {
        const size = letters * scale;
        const free = along - widthOf(words, size) - 1.3 * size;
        if (free < 0 || across < 1.5 * size) return [];
        // At its ends, where a cut's number stands at the other, with less air.
        const ends = free + 0.7 * size;
        return [0, -0.25 * free, 0.25 * free, -0.5 * ends, 0.5 * ends].map((off) => [
          text(words, [x + off * way[0], y + off * way[1]], size, 'centre', turn),
        ]);
      }),
    ),
  );
  const turn = length < width ? { angleInDegrees: 90 } : {};
  return { places: [...places, [text(ways.at(-1)!, [x, y], SMALLEST_LETTERS * scale, 'centre', turn)]] };
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
