import type { Box } from '../trace/box.js';
import { grown, joinBoxes, overlaps } from '../trace/box.js';
import type { Trace } from '../trace/trace.js';

/**
 * What is inked of a drawing, as tiling sees it: for every whole millimetre of `x` from `from`, the lowest and highest
 * point. A millimetre without ink has `low > high`. The single lines are kept for the question whether a page would be
 * blank.
 */
export interface Ink {
  readonly from: number;
  readonly low: Float64Array;
  readonly high: Float64Array;
  readonly lines: readonly InkedLine[];
}

/** A run of straight lines x0, y0, x1, y1, … and how far it was moved up. */
interface InkedLine {
  readonly points: Float64Array;
  readonly box: Box;
  readonly up: number;
}

/** A line is inked to this far from its middle, mm: no page may cut it lengthwise. */
const LINE_REACH = 1;

/** The ink of a traced drawing; a text counts as the box it stands in. Empty (no millimetres) when nothing is drawn. */
export function inkOf(trace: Trace): Ink {
  const lines: InkedLine[] = [
    ...trace.lines.map(({ points, box }) => ({ points, box, up: 0 })),
    ...trace.texts.map(({ corners, box }) => ({ points: closedRun(corners), box, up: 0 })),
  ];
  if (lines.length === 0) return { from: 0, low: new Float64Array(0), high: new Float64Array(0), lines };
  const box = joinBoxes(lines.map((line) => line.box));
  const from = Math.floor(box.minX - LINE_REACH);
  const count = Math.floor(box.maxX + LINE_REACH) - from + 1;
  const low = new Float64Array(count).fill(Infinity);
  const high = new Float64Array(count).fill(-Infinity);
  for (const { points } of lines) {
    for (let i = 2; i < points.length; i += 2) {
      addLine(from, low, high, points[i - 2]!, points[i - 1]!, points[i]!, points[i + 1]!);
    }
  }
  widen(low, high);
  return { from, low, high, lines };
}

/** The ink of several drawings laid into one frame, each moved up by a whole number of millimetres. */
export function mergedInk(parts: readonly { readonly ink: Ink; readonly up: number }[]): Ink {
  if (parts.length === 1 && parts[0]!.up === 0) return parts[0]!.ink;
  const filled = parts.filter(({ ink }) => ink.low.length > 0);
  if (filled.length === 0) return parts[0]!.ink;
  const from = Math.min(...filled.map(({ ink }) => ink.from));
  const count = Math.max(...filled.map(({ ink }) => ink.from + ink.low.length)) - from;
  const low = new Float64Array(count).fill(Infinity);
  const high = new Float64Array(count).fill(-Infinity);
  for (const { ink, up } of filled) {
    for (let i = 0, at = ink.from - from; i < ink.low.length; i++, at++) {
      const [lowest, highest] = [ink.low[i]! + up, ink.high[i]! + up];
      if (lowest < low[at]!) low[at] = lowest;
      if (highest > high[at]!) high[at] = highest;
    }
  }
  const lines = filled.flatMap(({ ink, up }) => ink.lines.map((line) => ({ ...line, up: line.up + up })));
  return { from, low, high, lines };
}

/** Area between the lowest and the highest line, mm², within a stretch of `x` where one is given. */
export function inkedArea(ink: Ink, [from, to]: readonly [number, number] = [-Infinity, Infinity]): number {
  let area = 0;
  const end = Math.min(ink.low.length, Math.floor(to - ink.from));
  for (let i = Math.max(0, Math.ceil(from - ink.from)); i < end; i++)
    area += Math.max(0, ink.high[i]! - ink.low[i]! - 2 * LINE_REACH);
  return area;
}

/** Whether any line touches a box. */
export function hasInk(ink: Ink, box: Box): boolean {
  return ink.lines.some((line) => {
    const { points, up } = line;
    const seen = { ...box, minY: box.minY - up, maxY: box.maxY - up };
    if (!overlaps(line.box, seen)) return false;
    for (let i = 2; i < points.length; i += 2) {
      if (touches(points[i - 2]!, points[i - 1]!, points[i]!, points[i + 1]!, seen)) return true;
    }
    return false;
  });
}

/** The single lines near a box, so that many places within it can be asked about quickly. */
export function inkNear(ink: Ink, box: Box): Ink {
  const near = grown(box, 1);
  const lines = ink.lines.flatMap(({ points, up }): InkedLine[] => {
    const found: InkedLine[] = [];
    for (let i = 2; i < points.length; i += 2) {
      const [ax, ay, bx, by] = [points[i - 2]!, points[i - 1]! + up, points[i]!, points[i + 1]! + up];
      if (!touches(ax, ay, bx, by, near)) continue;
      found.push({
        points: Float64Array.of(ax, ay, bx, by),
        box: { minX: Math.min(ax, bx), minY: Math.min(ay, by), maxX: Math.max(ax, bx), maxY: Math.max(ay, by) },
        up: 0,
      });
    }
    return found;
  });
  return { ...ink, lines };
}

function touches(ax: number, ay: number, bx: number, by: number, { minX, minY, maxX, maxY }: Box): boolean {
  if (Math.max(ax, bx) < minX || Math.min(ax, bx) > maxX || Math.max(ay, by) < minY || Math.min(ay, by) > maxY) {
    return false;
  }
  if (ax === bx) return true;
  const atLeft = yWithin(ax, ay, bx, by, minX);
  const atRight = yWithin(ax, ay, bx, by, maxX);
  return Math.max(atLeft, atRight) >= minY && Math.min(atLeft, atRight) <= maxY;
}

/** Height of the line at `x`, or of the end nearest to it where the line does not reach. */
function yWithin(ax: number, ay: number, bx: number, by: number, x: number): number {
  const t = Math.min(1, Math.max(0, (x - ax) / (bx - ax)));
  return ay + t * (by - ay);
}

function addLine(
  from: number,
  low: Float64Array,
  high: Float64Array,
  ax: number,
  ay: number,
  bx: number,
  by: number,
): void {
  const [x1, y1, x2, y2] = ax > bx ? [bx, by, ax, ay] : [ax, ay, bx, by];
  const slope = x1 === x2 ? 0 : (y2 - y1) / (x2 - x1);
  for (let i = Math.floor(x1) - from; i <= Math.floor(x2) - from; i++) {
    const atLeft = y1 + (Math.max(x1, from + i) - x1) * slope;
    const atRight = x1 === x2 ? y2 : y1 + (Math.min(x2, from + i + 1) - x1) * slope;
    low[i] = Math.min(low[i]!, atLeft, atRight);
    high[i] = Math.max(high[i]!, atLeft, atRight);
  }
}

/** Makes the ink reach a millimetre further in every direction. */
function widen(low: Float64Array, high: Float64Array): void {
  const [lows, highs] = [low.slice(), high.slice()];
  for (let i = 0; i < low.length; i++) {
    low[i] = Math.min(lows[i]!, lows[i - 1] ?? Infinity, lows[i + 1] ?? Infinity) - LINE_REACH;
    high[i] = Math.max(highs[i]!, highs[i - 1] ?? -Infinity, highs[i + 1] ?? -Infinity) + LINE_REACH;
  }
}

function closedRun(corners: Float64Array): Float64Array {
  const run = new Float64Array(corners.length + 2);
  run.set(corners);
  run.set(corners.subarray(0, 2), corners.length);
  return run;
}
