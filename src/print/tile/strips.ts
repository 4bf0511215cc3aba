import type { Drawing } from '../../sheet/drawing.js';
import { crampedOn } from '../trace/settle.js';
import { grown, overlaps, type Box } from '../trace/box.js';
import { traceOf } from '../trace/trace.js';
import { extremesOf } from './extremes.js';
import { inkOf } from './ink.js';
import {
  areaBound,
  traced,
  type Format,
  type Laid,
  type Placed,
  type Run,
  type RunPage,
  type TilePlan,
  windowBox,
} from './nest.js';
import { MARK_REACH } from './seam.js';
import { columnCount, type Pane, type Window } from './tile.js';

/** Kept free over and under what a strip shows, mm. */
const AIR = 1;
/** Drawings lie so far apart in the frame of their run, mm: no window shows two. */
const APART = 200;

/**
 * Lays drawings onto pages in strips: each is cut across where pages end, every strip is only as high as what it shows,
 * and pages carry several, one over the other, to be cut apart and joined end to end.
 *
 * @returns undefined where a page is lower than what a strip shows.
 */
export function strips(drawings: readonly Drawing[], formats: readonly Format[]): TilePlan | undefined {
  const loose = drawings.map(traced);
  const placed = loose.reduce<Placed[]>((done, next) => {
    const under = done.at(-1);
    const up = under ? Math.floor(lowest(under) + under.up - highest(next)) - APART : 0;
    return [...done, { ...next, up }];
  }, []);
  const runs = formats.flatMap(({ forStrips, ...whole }): Run[] => {
    const format = forStrips ?? whole;
    const pane = format.paneFor(Math.max(...loose.map(({ ink }) => ink.low.length)));
    const windows = COUNTED.flatMap((cost) => windowsOf(placed, pane, cost) ?? []);
    return windows.map((each) => ({ placed, format, pane, windows: each, pages: packed(each, pane) }));
  });
  const [first, ...others] = runs;
  if (!first) return undefined;
  const fewest = others.reduce((best, next) => (next.pages.length < best.pages.length ? next : best), first);
  const run = withRoom(fewest);
  const sheets = run.pages.length;
  return { runs: [run], sheets, areaBound: areaBound(drawings, formats, sheets) };
}

/** How much higher a strip becomes that does not hold its words, mm: once, and once more. */
const ROOM = [16, 24] as const;

/** A run whose strips are higher where words of theirs have no room, as far as height gives them any. */
function withRoom(run: Run): Run {
  let best = { run, cramped: crampedIn(run) };
  for (const room of ROOM) {
    const { cramped } = best;
    if (cramped.length === 0) break;
    const { windows, pane } = best.run;
    const pages = keptOf(best.run);
    const higher = windows.map((window, i) =>
      cramped.some((box) => overlaps(box, grown(pages[i]!, room)))
        ? { ...window, height: Math.min(pane.height, window.height + room) }
        : window,
    );
    const wider = { ...best.run, windows: higher, pages: packed(higher, pane) };
    const left = crampedIn(wider);
    if (left.length < cramped.length) best = { run: wider, cramped: left };
  }
  return best.run;
}

const crampedIn = (run: Run): Box[] => crampedOn(run.placed, { pages: keptOf(run), taken: [] });

/** What is seen of each strip once they are joined: the next one lies over its end. */
function keptOf(run: Run): Box[] {
  return run.windows.map((window): Box => {
    const box = windowBox(run, window);
    const next = run.windows.find(({ column }) => column === window.column + 1);
    return { ...box, maxX: next ? next.x : box.maxX };
  });
}

const lowest = ({ ink }: Placed): number => ink.low.reduce((a, b) => Math.min(a, b), Infinity);
const highest = ({ ink }: Placed): number => ink.high.reduce((a, b) => Math.max(a, b), -Infinity);

/** What strips of a drawing cost, by which its shift is chosen: their height in all, or how many pair on no page. */
type Cost = (heights: readonly number[], pane: Pane) => number;
/** What one more seam counts for, mm of a strip's height. */
const SEAM = 15;
const COUNTED: readonly Cost[] = [
  (heights) => heights.reduce((sum, height) => sum + height + SEAM, 0),
  (heights, pane) => heights.filter((height) => 2 * height > pane.height).length * pane.height + heights.length,
];

/** The strips of all drawings, each shifted along the board by whole millimetres to where it costs least. */
function windowsOf(placed: readonly Placed[], pane: Pane, cost: Cost): [readonly Window[]] | undefined {
  const all: Window[] = [];
  for (const each of placed) {
    const step = pane.width - pane.overlap;
    // No strip is the neighbour of another drawing's.
    const begin = 2 * all.length;
    const extremes = extremesOf(each.ink, pane.width);
    const { from, length } = stretchOf(each.drawing);
    let best: { windows: Window[]; cost: number } | undefined;
    for (let shift = 0; shift < step; shift++) {
      const windows: Window[] = [];
      for (let column = 0; column < columnCount(length + shift, pane); column++) {
        const first = column * step - shift + from - each.ink.from;
        const [low, high] = [Math.floor(extremes.lowest(first)) - AIR, Math.ceil(extremes.highest(first)) + AIR];
        if (low > high) continue;
        const at = { x: each.ink.from + first, y: low + each.up, height: high - low };
        windows.push({ column: begin + column, row: 0, ...at });
      }
      joinNeighbours(windows);
      if (windows.some(({ height }) => height > pane.height)) continue;
      const costs = cost(
        windows.map(({ height }) => height),
        pane,
      );
      if (!best || costs < best.cost) best = { windows, cost: costs };
    }
    if (!best) return undefined;
    all.push(...best.windows);
  }
  return [all];
}

/**
 * The stretch of a drawing that strips must show, whole mm. Words beyond its ends make it no longer: there are other
 * places for them.
 */
function stretchOf(drawing: Drawing): { from: number; length: number } {
  const lines = inkOf(traceOf({ ...drawing, captions: [] }));
  const [first, last] = drawing.must ?? [-Infinity, Infinity];
  const from = Math.max(lines.from, Math.floor(first));
  return { from, length: Math.min(lines.from + lines.low.length, Math.ceil(last)) - from };
}

/** Two strips that join share at least so much of their edge, mm: room for a mark and its letters. */
const SHARED = 2 * MARK_REACH + 6;

/** Makes strips higher where two neighbours share less of their edge than a seam takes. */
function joinNeighbours(windows: Window[]): void {
  for (let i = 1; i < windows.length; i++) {
    const [a, b] = [windows[i - 1]!, windows[i]!];
    if (b.column !== a.column + 1) continue;
    const lack = SHARED - (Math.min(a.y + a.height, b.y + b.height) - Math.max(a.y, b.y));
    if (lack <= 0) continue;
    const part = Math.ceil(lack / 2);
    const [lower, higher] = a.y + a.height < b.y + b.height ? [i - 1, i] : [i, i - 1];
    windows[lower] = { ...windows[lower]!, height: windows[lower]!.height + part };
    const down = windows[higher]!.y > windows[lower]!.y ? higher : lower;
    windows[down] = { ...windows[down]!, y: windows[down]!.y - part, height: windows[down]!.height + part };
  }
}

/**
 * Strips on pages as they follow one another where that takes no more pages, else the tallest first (first fit
 * decreasing; Johnson, Demers, Ullman, Garey and Graham 1974, "Worst-case performance bounds for simple one-dimensional
 * packing algorithms").
 */
export function packed(windows: readonly Pick<Window, 'height'>[], { height: room }: Pick<Pane, 'height'>): RunPage[] {
  const order = windows.map((_, i) => i);
  const inOrder = firstFit(order, windows, room);
  const tallest = firstFit(
    [...order].sort((a, b) => windows[b]!.height - windows[a]!.height),
    windows,
    room,
  );
  const pages = tallest.length < inOrder.length ? tallest : inOrder;
  return pages
    .map((page) => page.sort((a, b) => a - b))
    .sort(([a], [b]) => a! - b!)
    .map((page) => {
      let top = room;
      return page.map((window): Laid => ({ window, x: 0, y: (top -= windows[window]!.height) }));
    });
}

/** Each in the first page that has room for it. */
function firstFit(order: readonly number[], windows: readonly Pick<Window, 'height'>[], room: number): number[][] {
  const pages: { holds: number[]; left: number }[] = [];
  for (const window of order) {
    const { height } = windows[window]!;
    let page = pages.find(({ left }) => left >= height);
    if (!page) pages.push((page = { holds: [], left: room }));
    page.holds.push(window);
    page.left -= height;
  }
  return pages.map(({ holds }) => holds);
}
