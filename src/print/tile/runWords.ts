import type { Caption, Layer, Shape, TextShape } from '../../sheet/drawing.js';
import { printLength } from '../../length/length.js';
import { widthOf } from '../../sheet/lettering.js';
import { text } from '../../sheet/primitives.js';
import { boxOfPoints, isIn, joinBoxes, overlaps, shifted, type Box } from '../trace/box.js';
import { inkOf, type Ink } from './ink.js';
import { isInStrips, windowBox, type Placed, type Run } from './nest.js';
import { MARK_REACH, type Seam } from './seam.js';
import type { Words } from '../../words/printed.js';
import { settledOn } from '../trace/settle.js';
import { traceOf, type Trace, type TracedText } from '../trace/trace.js';

/** Heights of a drawing's name on a page that it shares, and the steps of the search for its place, mm. */
const NAME = [5, 3.5] as const;
const SMALLEST = 2.5;
const STEP = { along: 8, up: 3 } as const;
/** How far beyond its drawing a name may stand where there is no room within, mm. */
const BEYOND = 30;

/** A drawing of a run with its words where the run's pages leave them whole. */
export interface Written extends Placed {
  /**
   * Whether words are printed on a page of the run, by its index: each on one page alone, unless no page has them
   * whole.
   */
  isOn(page: number, words: TracedText): boolean;
}

/**
 * The drawings of a run with every word in its place: within one page as it is seen when all are glued together, on no
 * seam, mark or line. Where several share the pages, each says on every page what it is and which way it looks.
 */
export function writtenOn(run: Run, seams: readonly Seam[], words: Words): Written[] {
  const pages = run.windows.map((_, i) => keptOf(run, seams, i));
  const shares = run.placed.length > 1;
  const inStrips = isInStrips(run);
  const named = run.placed.map((placed) => ({
    ...placed,
    after: (written: readonly Shape[]) =>
      placed.drawing.apart
        ? partNames(placed, pages, written)
        : inStrips
          ? stripNames(placed, pages, words)
          : shares
            ? namesOf(placed, pages)
            : [],
  }));
  const marks = seams.flatMap(marksOf);
  return settledOn(named, { pages, taken: marks }).map((drawing, i): Written => {
    const { ink, up } = run.placed[i]!;
    const trace = traceOf(drawing);
    const owner = ownersOf(trace, up, pages);
    return { drawing, trace, ink, up, isOn: (page, words) => (owner.get(words) ?? page) === page };
  });
}

/** What of a page is seen when all are glued together: up to the seams that others are laid over. */
function keptOf(run: Run, seams: readonly Seam[], index: number): Box {
  const under = seams.filter((seam) => seam.under === index);
  const box = windowBox(run, run.windows[index]!);
  const at = (way: Seam['way']) => under.flatMap((seam) => (seam.way === way ? [seam.at] : []));
  return { ...box, maxX: Math.min(box.maxX, ...at('upright')), maxY: Math.min(box.maxY, ...at('level')) };
}

function marksOf({ way, at, marks }: Seam): Box[] {
  return marks.map(({ along }) => {
    const [x, y] = way === 'upright' ? [at, along] : [along, at];
    return { minX: x - MARK_REACH, minY: y - MARK_REACH, maxX: x + MARK_REACH, maxY: y + MARK_REACH };
  });
}

function ownersOf({ texts }: Trace, up: number, pages: readonly Box[]): Map<TracedText, number> {
  const owners = new Map<TracedText, number>();
  for (const words of texts) {
    const owner = pages.findIndex((page) => isIn(words.box, shifted(page, 0, -up)));
    if (owner >= 0) owners.set(words, owner);
  }
  return owners;
}

/** A drawing's name on each page that shows a part of it. */
function namesOf({ drawing, ink, up }: Placed, pages: readonly Box[]): Caption[] {
  return pages.flatMap((page): Caption[] => {
    const own = shifted(page, 0, -up);
    return captionAt(NAME.map((height) => new NamePlaces(drawing.name ?? drawing.title, height, ink, own)));
  });
}

/** On each strip of a drawing which it is, from where to where it reaches, and of what, as far as there is room. */
function stripNames({ drawing, ink, up }: Placed, pages: readonly Box[], words: Words): Caption[] {
  return pages.flatMap((page, i): Caption[] => {
    const own = shifted(page, 0, -up);
    const strip = `${words.strip} ${String(i + 1)}`;
    const { units } = drawing;
    const along = units && [own.minX, own.maxX].map((x) => printLength(Math.max(0, x), units)).join(' – ');
    const short = along === undefined ? strip : `${strip}: ${along}`;
    const sense = drawing.sense === undefined ? short : `${short} · ${drawing.sense}`;
    const ways = [
      [`${short} · ${drawing.name ?? drawing.title}`, NAME] as const,
      [sense, [...NAME, SMALLEST]] as const,
    ];
    return captionAt(
      ways.flatMap(([name, heights]) => heights.map((height) => new NamePlaces(name, height, ink, own))),
    );
  });
}

/** Of parts that lie across pages the name of each on each page that shows some of it and has none of its words. */
function partNames({ drawing, up }: Placed, pages: readonly Box[], written: readonly Shape[]): Caption[] {
  if (pages.length === 1) return [];
  const words = written.filter((shape): shape is TextShape => shape.kind === 'text');
  return (drawing.apart ?? []).flatMap((part) => {
    const trace = traceOf({ ...drawing, shapes: part.shapes, captions: [] });
    const [box, ink] = [joinBoxes(trace.lines.map((line) => line.box)), inkOf(trace)];
    return pages.flatMap((page): Caption[] => {
      const own = shifted(page, 0, -up);
      const isThere = ({ x, y }: TextShape, { minX, maxX, minY, maxY }: Box) =>
        x >= minX && x <= maxX && y >= minY && y <= maxY;
      if (words.some((each) => isThere(each, own) && isThere(each, box))) return [];
      return captionAt(
        NAME.map((height) => new NamePlaces(part.name, height, ink, own, 0)),
        { optional: true },
      );
    });
  });
}

/** A caption at the first of several kinds of place; none where there is no place at all. */
function captionAt(kinds: readonly NamePlaces[], how: Pick<Caption, 'optional'> = {}): Caption[] {
  const there = kinds.filter((kind) => !kind[Symbol.iterator]().next().done);
  const places = {
    *[Symbol.iterator]() {
      for (const kind of there) yield* kind;
    },
  };
  return there.length > 0 ? [{ places, ...how }] : [];
}

/**
 * Places for a name on a page: from the left, nearest to the middle of what the drawing takes there, then those beyond
 * it. There are thousands, and the first few mostly do.
 */
class NamePlaces implements Iterable<readonly Shape[]> {
  constructor(
    private readonly name: string,
    private readonly height: number,
    private readonly ink: Ink,
    private readonly page: Box,
    private readonly reachBeyond = BEYOND,
  ) {}

  *[Symbol.iterator](): Generator<readonly Shape[], void, undefined> {
    for (const isBeyond of [false, true]) {
      for (const { x, middle, reach } of this.stations()) {
        for (let off = 0; off <= reach + this.reachBeyond; off += STEP.up) {
          if (off > reach !== isBeyond) continue;
          for (const y of off === 0 ? [middle] : [middle + off, middle - off]) {
            yield [text(this.name, [x, y], this.height)];
          }
        }
      }
    }
  }

  /** Where along the page a name may have its middle, and what the drawing, or the page, leaves it up and down. */
  private *stations() {
    const { ink, page, height } = this;
    const half = widthOf(this.name, height) / 2 + 1;
    const [from, to] = [Math.max(page.minX, ink.from + 2), Math.min(page.maxX, ink.from + ink.low.length - 2)];
    for (let x = from + half + 2; x <= to - half - 2; x += STEP.along) {
      const at = Math.floor(x) - ink.from;
      const low = Math.max(ink.low[at] ?? Infinity, page.minY) + height;
      const high = Math.min(ink.high[at] ?? -Infinity, page.maxY) - height;
      yield { x, middle: (low + high) / 2, reach: (high - low) / 2 };
    }
  }
}

/** Whether anything of a drawing shows on a page of its run. */
export function showsOn({ trace, up, isOn }: Written, run: Run, page: number): boolean {
  const box = shifted(windowBox(run, run.windows[page]!), 0, -up);
  return (
    trace.lines.some((line) => overlaps(line.box, box)) ||
    trace.texts.some((words) => isOn(page, words) && overlaps(words.box, box))
  );
}

/** Whether a line of a kind shows in a box, in the drawing's frame. */
export function hasLine({ lines }: Trace, layer: Layer, box: Box): boolean {
  return lines.some((line) => {
    if (line.layer !== layer || !overlaps(line.box, box)) return false;
    const { points } = line;
    for (let i = 2; i < points.length; i += 2) {
      if (overlaps(boxOfPoints([points[i - 2]!, points[i - 1]!, points[i]!, points[i + 1]!]), box)) return true;
    }
    return false;
  });
}
