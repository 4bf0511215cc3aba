import { once } from '../../kept/once.js';
import type { Caption, Drawing, Shape } from '../../sheet/drawing.js';
import { placesOf } from '../../sheet/moved.js';
import { boxOfPoints, grown, isIn, joinBoxes, type Box } from './box.js';
import { Ground } from './ground.js';
import { cornersOf } from './lettering.js';
import { linePoints } from './linePoints.js';
import { cornersOfBox } from './quad.js';

/** Kept free between words and the edge of the page they stand on, mm. */
const FROM_EDGE = 1.5;

/**
 * How bad it is that words cross the edge of their page, that they stand on others, that a line crosses them, that a
 * seam's mark must give way to them, and that an arrow, a leader or the mark they are said of is on another page.
 */
const CUT = 1000;
const OVERPRINTED = 100;
const CROSSED = 10;
const MARKED = 2;
const PARTED = 1;

/**
 * Where words may stand: whole within one of the pages, each as what is seen of it when all are glued together; on none
 * of the boxes taken if that can be helped.
 */
export interface Pages {
  readonly pages: readonly Box[];
  readonly taken: readonly Box[];
}

/** A drawing moved up on its run. */
interface Moved {
  readonly drawing: Drawing;
  readonly up: number;
  /** Words that take what the captions of all drawings leave, by where those have come to stand. */
  readonly after?: (written: readonly Shape[]) => readonly Caption[];
}

/**
 * A drawing with its captions in their places, as it comes out on one endless page: what SVG, DXF and small figures
 * show.
 */
export const settled = once((drawing: Drawing): Drawing =>
  drawing.captions?.length ? settledOn([{ drawing, up: 0 }])[0]! : drawing,
);

/**
 * Drawings that lie on one run of pages, each caption at the first of its places where it is whole on one page and
 * nothing crosses it; where there is no such place, at the least bad one, or left out if it may be.
 */
export const settledOn = (moved: readonly Moved[], on?: Pages): Drawing[] => settle(moved, on).drawings;

/** Where words that must be said find no place on their pages that is whole and clear: what is around the least bad. */
export const crampedOn = (moved: readonly Moved[], on: Pages): Box[] => settle(moved, on).cramped;

function settle(moved: readonly Moved[], on?: Pages): { drawings: Drawing[]; cramped: Box[] } {
  const cramped: Box[] = [];
  const ground = new Ground();
  for (const { drawing, up } of moved) for (const shape of drawing.shapes) add(ground, shape, up);
  const taken = new Ground();
  for (const box of on?.taken ?? []) taken.addWords(cornersOfBox(box));
  const pages = on && new Sheets(on.pages.map((page) => grown(page, -FROM_EDGE)));
  const write = (captions: readonly Caption[], up: number) =>
    captions.flatMap((caption) => {
      const { place, harm } = bestPlace(caption, up, { ground, taken, ...(pages && { pages }) });
      if (harm >= CROSSED) cramped.push(boxAround(place, up));
      for (const shape of place) add(ground, shape, up);
      return place;
    });
  const own = moved.map(({ drawing, up }) => write(drawing.captions ?? [], up));
  const drawings = moved.map(({ drawing, up, after }, i) => {
    return { ...drawing, captions: [], shapes: [...drawing.shapes, ...own[i]!, ...write(after?.(own[i]!) ?? [], up)] };
  });
  return { drawings, cramped };
}

/** What is there already, and which pages there are. */
interface There {
  readonly ground: Ground;
  readonly taken: Ground;
  readonly pages?: Sheets;
}

/** Pages by where they lie, so that those around a place are found among hundreds. */
class Sheets {
  private readonly cells = new Map<string, Box[]>();

  constructor(pages: readonly Box[]) {
    for (const page of pages) {
      for (let x = cellOf(page.minX); x <= cellOf(page.maxX); x++) {
        for (let y = cellOf(page.minY); y <= cellOf(page.maxY); y++) {
          const key = `${x} ${y}`;
          this.cells.set(key, [...(this.cells.get(key) ?? []), page]);
        }
      }
    }
  }

  /** Whether a box lies whole on one of them. */
  hold(box: Box): boolean {
    return this.cells.get(`${cellOf(box.minX)} ${cellOf(box.minY)}`)?.some((page) => isIn(box, page)) ?? false;
  }
}

/** Cells in which pages are kept, mm. */
const CELL = 150;
const cellOf = (mm: number): number => Math.floor(mm / CELL);

/** The least bad place of a caption, and how bad it is; none, which harms nothing, where it may be left out. */
function bestPlace(caption: Caption, up: number, there: There): { place: readonly Shape[]; harm: number } {
  let best: readonly Shape[] = [];
  let least = caption.optional ? 1 : Infinity;
  const mark = besideOf(caption, up);
  for (const place of placesOf(caption)) {
    const harm = harmOf(place, mark, there, up, least);
    if (harm < least) [best, least] = [place, harm];
    if (least === 0) break;
  }
  return { place: best, harm: best.length > 0 ? least : 0 };
}

const boxAround = (place: readonly Shape[], up: number): Box =>
  joinBoxes(place.map((shape) => boxOfPoints(raised(outlineOf(shape), up))));

/** The spot that a caption's words are said of, as a box, where there is one. */
function besideOf({ beside, by: [dx, dy] = [0, 0] }: Caption, up: number): readonly Box[] {
  if (!beside) return [];
  const [x, y] = [beside[0] + dx, beside[1] + dy + up];
  return [{ minX: x, minY: y, maxX: x, maxY: y }];
}

/** How bad a place is; where it is found to be no better than `least`, not to the end. */
function harmOf(
  place: readonly Shape[],
  mark: readonly Box[],
  { ground, taken, pages }: There,
  up: number,
  least: number,
): number {
  const outlines = place.map((shape) => raised(outlineOf(shape), up));
  const boxes = outlines.map(boxOfPoints);
  let harm = pages && !pages.hold(joinBoxes([...boxes, ...mark])) ? PARTED : 0;
  for (const [i, shape] of place.entries()) {
    if (harm >= least) return harm;
    const points = outlines[i]!;
    if (shape.kind === 'text') {
      if (pages && !pages.hold(boxes[i]!)) harm += CUT;
      if (ground.isWrittenOn(points)) harm += OVERPRINTED;
      if (ground.isCrossed(points)) harm += CROSSED;
      if (taken.isWrittenOn(points)) harm += MARKED;
    } else {
      if (ground.strikes(points)) harm += OVERPRINTED;
      if (taken.strikes(points)) harm += MARKED;
    }
  }
  return harm;
}

const outlineOf = (shape: Shape): Float64Array => (shape.kind === 'text' ? cornersOf(shape) : linePoints(shape));

function add(ground: Ground, shape: Shape, up: number): void {
  if (shape.kind === 'text') ground.addWords(raised(cornersOf(shape), up));
  else ground.addLine(raised(linePoints(shape), up));
}

const raised = (points: Float64Array, up: number): Float64Array =>
  up === 0 ? points : points.map((value, i) => (i % 2 === 0 ? value : value + up));
