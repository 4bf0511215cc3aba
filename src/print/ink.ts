import type { Trace } from './trace.js';
import { joinBoxes } from './box.js';

/**
 * What is inked of a drawing, as tiling sees it: for every whole millimetre of `x` from `from`, the lowest and highest point.
 * A millimetre without ink has `low > high`. The single lines are kept for the question whether a page would be blank.
 */
export interface Ink {
  readonly from: number;
  readonly low: Float64Array;
  readonly high: Float64Array;
  /** Straight lines: x1, y1, x2, y2, … */
  readonly lines: Float64Array;
}

/** The ink of a traced drawing; a text counts as the box it stands in. Empty (no millimetres) when nothing is drawn. */
export function inkOf(trace: Trace): Ink {
  const runs = [...trace.lines.map((line) => line.points), ...trace.texts.map((text) => closedRun(text.corners))];
  const box = joinBoxes([...trace.lines, ...trace.texts].map((traced) => traced.box));
  if (runs.length === 0)
    return { from: 0, low: new Float64Array(0), high: new Float64Array(0), lines: new Float64Array(0) };
  const from = Math.floor(box.minX);
  const count = Math.floor(box.maxX) - from + 1;
  const ink = { from, low: new Float64Array(count).fill(Infinity), high: new Float64Array(count).fill(-Infinity) };
  const lines: number[] = [];
  for (const points of runs) {
    if (points.length === 2) lines.push(points[0]!, points[1]!, points[0]!, points[1]!);
    for (let i = 2; i < points.length; i += 2) {
      lines.push(points[i - 2]!, points[i - 1]!, points[i]!, points[i + 1]!);
    }
  }
  const flat = Float64Array.from(lines);
  for (let i = 0; i < flat.length; i += 4) addLine(ink, flat[i]!, flat[i + 1]!, flat[i + 2]!, flat[i + 3]!);
  return { ...ink, lines: flat };
}

/** The ink of several drawings laid into one frame, each moved up by a whole number of millimetres. */
export function mergedInk(parts: readonly { readonly ink: Ink; readonly up: number }[]): Ink {
  const filled = parts.filter(({ ink }) => ink.low.length > 0);
  if (filled.length === 0) return parts[0]!.ink;
  const from = Math.min(...filled.map(({ ink }) => ink.from));
  const count = Math.max(...filled.map(({ ink }) => ink.from + ink.low.length)) - from;
  const low = new Float64Array(count).fill(Infinity);
  const high = new Float64Array(count).fill(-Infinity);
  for (const { ink, up } of filled) {
    for (let i = 0; i < ink.low.length; i++) {
      const at = ink.from + i - from;
      low[at] = Math.min(low[at]!, ink.low[i]! + up);
      high[at] = Math.max(high[at]!, ink.high[i]! + up);
    }
  }
  const lines = new Float64Array(filled.reduce((sum, { ink }) => sum + ink.lines.length, 0));
  let end = 0;
  for (const { ink, up } of filled) {
    for (let i = 0; i < ink.lines.length; i++) lines[end++] = ink.lines[i]! + (i % 2 === 1 ? up : 0);
  }
  return { from, low, high, lines };
}

/** Area between the lowest and the highest ink, mm²: no fewer sheets than this fills can show the drawing. */
export function inkedArea(ink: Ink): number {
  let area = 0;
  for (let i = 0; i < ink.low.length; i++) area += Math.max(0, ink.high[i]! - ink.low[i]!);
  return area;
}

/** Whether any line touches the rectangle from (x1, y1) to (x2, y2). */
export function hasInk(ink: Ink, x1: number, y1: number, x2: number, y2: number): boolean {
  const { lines } = ink;
  for (let i = 0; i < lines.length; i += 4) {
    const [ax, ay, bx, by] = [lines[i]!, lines[i + 1]!, lines[i + 2]!, lines[i + 3]!];
    if (Math.max(ax, bx) < x1 || Math.min(ax, bx) > x2 || Math.max(ay, by) < y1 || Math.min(ay, by) > y2) continue;
    const atX1 = yWithin(ax, ay, bx, by, x1);
    const atX2 = yWithin(ax, ay, bx, by, x2);
    if (Math.max(atX1, atX2) >= y1 && Math.min(atX1, atX2) <= y2) return true;
    if (ax === bx) return true;
  }
  return false;
}

/** Height of the line at `x`, or of the end nearest to it where the line does not reach. */
function yWithin(ax: number, ay: number, bx: number, by: number, x: number): number {
  if (ax === bx) return ay;
  const t = Math.min(1, Math.max(0, (x - ax) / (bx - ax)));
  return ay + t * (by - ay);
}

function addLine(ink: Omit<Ink, 'lines'>, ax: number, ay: number, bx: number, by: number): void {
  if (ax > bx) [ax, ay, bx, by] = [bx, by, ax, ay];
  const first = Math.floor(ax) - ink.from;
  const last = Math.floor(bx) - ink.from;
  for (let i = first; i <= last; i++) {
    const left = Math.max(ax, ink.from + i);
    const right = Math.min(bx, ink.from + i + 1);
    const y1 = ax === bx ? ay : ay + ((left - ax) / (bx - ax)) * (by - ay);
    const y2 = ax === bx ? by : ay + ((right - ax) / (bx - ax)) * (by - ay);
    ink.low[i] = Math.min(ink.low[i]!, y1, y2);
    ink.high[i] = Math.max(ink.high[i]!, y1, y2);
  }
}

function closedRun(corners: Float64Array): Float64Array {
  const run = new Float64Array(corners.length + 2);
  run.set(corners);
  run.set(corners.subarray(0, 2), corners.length);
  return run;
}
