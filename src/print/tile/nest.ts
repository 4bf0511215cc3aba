import type { Drawing } from '../../sheet/drawing.js';
import type { Box } from '../trace/box.js';
import type { Ink } from './ink.js';
import { inkedArea, inkOf, mergedInk } from './ink.js';
import type { Pane, Window } from './tile.js';
import { tile } from './tile.js';
import { traceOf, type Trace } from '../trace/trace.js';

/** Space between drawings that share pages, mm. */
const GAP = 10;

/** Which way the sheets lie. A roll always runs along the board. */
export type Orientation = 'landscape' | 'portrait';

/**
 * A page size as tiling sees it. For a roll the pane's width depends on the drawing, so it is asked for by the
 * drawing's length.
 */
export interface Format {
  readonly orientation: Orientation;
  /** The same for strips, with less under them: they are cut apart, and each says what it is. */
  readonly forStrips?: Format;
  paneFor(length: number): Pane;
}

/**
 * A drawing laid into the frame of its run: moved up by whole millimetres, never along, so that stations stay under one
 * another.
 */
export interface Placed {
  readonly drawing: Drawing;
  readonly trace: Trace;
  readonly ink: Ink;
  readonly up: number;
}

/** One run of pages from nose to tail with the drawings it carries, one above the other. */
export interface Run {
  readonly placed: readonly Placed[];
  readonly format: Format;
  readonly pane: Pane;
  readonly windows: readonly Window[];
  readonly pages: readonly RunPage[];
}

/** The windows that a page of a run carries, by their index: one, or several that are to be cut apart. */
export type RunPage = readonly Laid[];

/** A window on its page, from the pane's lower left corner, mm. */
export interface Laid {
  readonly window: number;
  readonly x: number;
  readonly y: number;
}

/** Whether a run is cut into strips, several of them on a page. */
export const isInStrips = ({ windows, pane }: Pick<Run, 'windows' | 'pane'>): boolean =>
  windows.some(({ height }) => height < pane.height);

/** A page for each window. */
export const pageEach = (windows: readonly Window[]): readonly RunPage[] =>
  windows.map((_, window) => [{ window, x: 0, y: 0 }]);

export interface TilePlan {
  readonly runs: readonly Run[];
  /** Pages in all. */
  readonly sheets: number;
  /** Fewer sheets than this cannot hold the drawings, whatever the layout: their area over the largest pane's. */
  readonly areaBound: number;
}

/**
 * Lays drawings onto runs of pages with the fewest sheets: over the way the sheets lie, how many drawings share a run
 * (in the given order, as long as one row of sheets carries them all: no strip is cut lengthwise to save a sheet), and
 * the shift along the board. On equal counts fewer drawings share a run, and the first format is taken.
 */
export function nest(drawings: readonly Drawing[], formats: readonly Format[]): TilePlan {
  const loose = drawings.map(traced);
  // fewest[j]: the best way to lay the first j drawings (dynamic programming over where the last run begins).
  const fewest: { sheets: number; runs: readonly Run[] }[] = [{ sheets: 0, runs: [] }];
  for (let j = 1; j <= loose.length; j++) {
    let best: { sheets: number; runs: readonly Run[] } | undefined;
    for (let i = j - 1; i >= 0; i--) {
      const placed = stack(loose.slice(i, j));
      const run = bestRun(placed, formats);
      if (!run) break;
      const sheets = fewest[i]!.sheets + run.pages.length;
      if (!best || sheets < best.sheets) best = { sheets, runs: [...fewest[i]!.runs, run] };
    }
    fewest.push(best!);
  }
  const { sheets, runs } = fewest[loose.length]!;
  return { runs, sheets, areaBound: areaBound(drawings, formats, sheets) };
}

/** A drawing as it is laid onto pages, where it stands by itself. */
export function traced(drawing: Drawing): Placed {
  const trace = traceOf(drawing);
  return { drawing, trace, ink: inkOf(trace), up: 0 };
}

/** Fewer sheets than this cannot hold drawings, whatever the layout: their area over the largest pane's. */
export function areaBound(drawings: readonly Drawing[], formats: readonly Format[], sheets: number): number {
  if (drawings.length === 0) return 0;
  // Words may stand elsewhere: only lines take room that they must have.
  const inks = drawings.map((drawing) => inkOf(traceOf({ ...drawing, captions: [] })));
  const area = inks.reduce((sum, ink, i) => sum + inkedArea(ink, drawings[i]!.must), 0);
  const all = formats.flatMap((format) => [format, ...(format.forStrips ? [format.forStrips] : [])]);
  const panes = inks.flatMap((ink) => all.map((format) => format.paneFor(ink.low.length)));
  const largest = Math.max(...panes.map((pane) => pane.width * pane.height));
  // A drawing that is hollow, its blank sheets left out, can take less than the area it encloses.
  return Math.min(sheets, Math.ceil(area / largest));
}

/** On which page of its run a window lies, from 0. */
export const pageOf = ({ pages }: Run, window: number): number =>
  pages.findIndex((page) => page.some((laid) => laid.window === window));

/** What a window shows, in the run's frame. */
export const windowBox = ({ pane }: Pick<Run, 'pane'>, { x, y, height }: Window): Box => ({
  minX: x,
  minY: y,
  maxX: x + pane.width,
  maxY: y + height,
});

/**
 * The format that takes the fewest sheets, the first of equals; undefined when several drawings do not fit one row of
 * sheets.
 */
function bestRun(placed: readonly Placed[], formats: readonly Format[]): Run | undefined {
  const ink = mergedInk(placed);
  const runs = formats.flatMap((format): Run[] => {
    const pane = format.paneFor(ink.low.length);
    const windows = tile(ink, pane, placed.length > 1 ? 1 : Infinity);
    return windows ? [{ placed, format, pane, windows, pages: pageEach(windows) }] : [];
  });
  return runs.reduce<Run | undefined>(
    (best, run) => (best && best.pages.length <= run.pages.length ? best : run),
    undefined,
  );
}

/** Puts each drawing under the ones before, as near as the gap allows at their closest point. */
function stack(loose: readonly Placed[]): Placed[] {
  const placed: Placed[] = [];
  for (const next of loose) {
    if (placed.length === 0) {
      placed.push(next);
      continue;
    }
    const above = mergedInk(placed);
    let up = Infinity;
    for (let i = 0; i < next.ink.low.length; i++) {
      const over = next.ink.from + i - above.from;
      if (over >= 0 && over < above.low.length) up = Math.min(up, above.low[over]! - next.ink.high[i]!);
    }
    placed.push({ ...next, up: Number.isFinite(up) ? Math.floor(up - GAP) : 0 });
  }
  return placed;
}
