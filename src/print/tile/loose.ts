import type { Drawing, Part as OfDrawing } from '../../sheet/drawing.js';
import { movedPart } from '../../sheet/moved.js';
import { heightOf, joinBoxes, widthOf, type Box } from '../trace/box.js';
import { inkOf } from './ink.js';
import { areaBound, nest, type Format, type Run, type TilePlan } from './nest.js';
import { strips } from './strips.js';
import type { Pane } from './tile.js';
import { traceOf } from '../trace/trace.js';

/** Kept free between parts, and from them to a page's frame, mm. */
const GAP = 8;
const AIR = 3;
/** On a roll, parts are laid onto pages of this length, mm. */
const ROLL_PAGE = 900;

/** How many parts a line may have that is tiled: which of these takes the fewest sheets is tried out. */
const LINES = [2, 3, 5, 8, 12, 18] as const;
/** More names than this are too small to read in a title block. */
const MOST_NAMES = 2;

interface Part extends OfDrawing {
  readonly drawing: Drawing;
  readonly box: Box;
}

/**
 * Lays drawings onto pages. Of those whose parts may lie anywhere, each part that a page holds is laid whole onto a
 * single page, with others; parts too large for a page lie side by side in a run of pages, as every other drawing does.
 *
 * @param title of the document: pages with parts of many drawings are named after it
 */
export function layLoose(title: string, drawings: readonly Drawing[], formats: readonly Format[]): TilePlan {
  const parts = drawings.flatMap((drawing) => (drawing.apart ?? []).map((part) => partOf(drawing, part)));
  if (parts.length === 0) return fewest(nest(drawings, formats), strips(drawings, formats));
  const best = formats
    .map((format) => singlePages(parts, format, title))
    .reduce((a, b) => (b.left.length < a.left.length || (sameLeft(a, b) && b.runs.length < a.runs.length) ? b : a));
  const others = drawings.filter(({ apart }) => !apart);
  const tiled = LINES.map((count) => nest([...inLines(best.left, count, title), ...others], formats)).reduce((a, b) =>
    b.sheets < a.sheets ? b : a,
  );
  const runs = [...best.runs, ...tiled.runs];
  const sheets = best.runs.length + tiled.sheets;
  const alone = parts.map(({ drawing, ...part }) => ({ ...drawing, ...part }));
  return { runs, sheets, areaBound: areaBound([...alone, ...others], formats, sheets) };
}

/** The plan of fewer sheets; of equals the first, with less to cut. */
const fewest = (whole: TilePlan, cut: TilePlan | undefined): TilePlan =>
  cut && cut.sheets < whole.sheets ? cut : whole;

interface Singles {
  readonly runs: readonly Run[];
  /** Parts that no single page holds. */
  readonly left: readonly Part[];
}

const sameLeft = (a: Singles, b: Singles): boolean => a.left.length === b.left.length;

function partOf(drawing: Drawing, part: OfDrawing): Part {
  const { lines, texts } = traceOf({ ...drawing, ...part });
  return { drawing, ...part, box: joinBoxes([...lines, ...texts].map(({ box }) => box)) };
}

/** A row of parts on a page: how far it is filled, and where it hangs. */
interface Shelf {
  readonly top: number;
  readonly height: number;
  filled: number;
}

interface Sheet {
  readonly parts: Part[];
  readonly shelves: Shelf[];
}

/**
 * Parts in rows, each in the first row of any page that has room for it, the tallest first (first fit decreasing
 * height; Coffman, Garey, Johnson and Tarjan 1980, "Performance bounds for level-oriented two-dimensional packing
 * algorithms").
 */
function singlePages(parts: readonly Part[], format: Format, title: string): Singles {
  const pane = format.paneFor(ROLL_PAGE);
  const [width, height] = [pane.width - 2 * AIR, pane.height - 2 * AIR];
  const fits = ({ box }: Part): boolean => widthOf(box) <= width && heightOf(box) <= height;
  const sheets: Sheet[] = [];
  const tallestFirst = parts.filter(fits).sort((a, b) => heightOf(b.box) - heightOf(a.box));
  for (const part of tallestFirst) {
    const [wide, tall] = [widthOf(part.box), heightOf(part.box)];
    const spot = sheets
      .flatMap((sheet) => sheet.shelves.map((shelf) => ({ sheet, shelf })))
      .find(({ shelf }) => tall <= shelf.height && shelf.filled + GAP + wide <= width);
    if (spot) {
      spot.sheet.parts.push(placed(part, spot.shelf.filled + GAP, spot.shelf.top));
      spot.shelf.filled += GAP + wide;
      continue;
    }
    const under = ({ shelves }: Sheet): number => {
      const last = shelves.at(-1);
      return last ? last.top - last.height - GAP : 0;
    };
    let sheet = sheets.find((each) => under(each) - tall >= -height);
    if (!sheet) sheets.push((sheet = { parts: [], shelves: [] }));
    const top = under(sheet);
    sheet.parts.push(placed(part, 0, top));
    sheet.shelves.push({ top, height: tall, filled: wide });
  }
  return { runs: sheets.map((sheet) => runOf(sheet, format, pane, title)), left: parts.filter((part) => !fits(part)) };
}

/** A part with the upper left corner of its box at a place. */
function placed({ drawing, box, ...part }: Part, x: number, y: number): Part {
  return { drawing, box, ...movedPart(part, x - box.minX, y - box.maxY) };
}

function runOf({ parts }: Sheet, format: Format, pane: Pane, title: string): Run {
  const drawing = together(parts, title);
  const trace = traceOf(drawing);
  const box = joinBoxes([...trace.lines, ...trace.texts].map((traced) => traced.box));
  const x = Math.floor((box.minX + box.maxX - pane.width) / 2);
  const y = Math.floor(box.maxY + AIR - pane.height);
  return {
    placed: [{ drawing, trace, ink: inkOf(trace), up: 0 }],
    format,
    pane,
    windows: [{ column: 0, row: 0, x, y, height: pane.height }],
    pages: [[{ window: 0, x: 0, y: 0 }]],
  };
}

/** Parts as one drawing, named after what they are of, or all together where that is much. */
function together(parts: readonly Part[], title: string): Drawing {
  const drawings = [...new Set(parts.map(({ drawing }) => drawing))];
  const apart = parts.map(({ name, shapes, captions }) => ({ name, shapes, captions }));
  return {
    id: drawings.map(({ id }) => id).join(' '),
    title: drawings.length > MOST_NAMES ? title : drawings.map((each) => each.title).join(' · '),
    notes: drawings[0]!.notes,
    ...(drawings[0]!.legend && { legend: drawings[0]!.legend }),
    shapes: apart.flatMap(({ shapes }) => shapes),
    captions: apart.flatMap(({ captions }) => captions),
    apart,
  };
}

/** Parts side by side in lines of so many, to be tiled: like heights together, so that lines lie close. */
function inLines(parts: readonly Part[], count: number, title: string): Drawing[] {
  const tallestFirst = [...parts].sort((a, b) => heightOf(b.box) - heightOf(a.box));
  return Array.from({ length: Math.ceil(parts.length / count) }, (_, i) => {
    let x = 0;
    const along = tallestFirst.slice(i * count, (i + 1) * count).map((part) => {
      const at = placed(part, x, 0);
      x += widthOf(part.box) + GAP;
      return at;
    });
    return { ...together(along, title), title };
  });
}
