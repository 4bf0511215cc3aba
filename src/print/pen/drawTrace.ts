import { once } from '../../kept/once.js';
import { SMALLEST_LETTERS } from '../../sheet/lettering.js';
import { grown, overlaps, type Box } from '../trace/box.js';
import { hatchOf, strokeOutside, type Stroke } from '../trace/hatch.js';
import { lineOf, narrow } from '../trace/line.js';
import type { Pen } from './pen.js';
import type { Trace, TracedLine, TracedText } from '../trace/trace.js';

/** Half the widest line, mm: lines that pass a page's edge this near still show on it. */
const LINE_REACH = 0.5;

/** Steps shorter than this on the paper are passed over, mm: a drawing made small has many. */
const SHORTEST = 0.05;

/**
 * Draws the part of a traced drawing that a box (in the drawing's frame) shows, moved and scaled onto the page.
 *
 * @param clear boxes in the drawing's frame that hatching leaves free, for words that the sheet adds.
 * @param isHere which of its words are drawn; all where absent.
 */
export function drawTrace(
  pen: Pen,
  trace: Trace,
  box: Box,
  onto: Placement,
  clear: readonly Box[] = [],
  isHere: (words: TracedText) => boolean = () => true,
): void {
  const near = grown(box, LINE_REACH / onto.scale);
  for (const line of trace.lines) {
    if (overlaps(line.box, near)) drawLine(pen, line, near, onto);
  }
  for (const stroke of hatchFor(trace, onto.scale)) {
    const { x1, y1, x2, y2 } = stroke;
    // Hatching rises to the right.
    if (x2 < near.minX || x1 > near.maxX || y2 < near.minY || y1 > near.maxY) continue;
    for (const left of clear.length > 0 ? strokeOutside(stroke, clear) : [stroke]) {
      pen.line([onto.x(left.x1), onto.y(left.y1), onto.x(left.x2), onto.y(left.y2)], narrow);
    }
  }
  for (const words of trace.texts) {
    const { shape, box: at } = words;
    if (!overlaps(at, near) || !isHere(words)) continue;
    const { align, angleInDegrees } = shape;
    pen.text(shape.text, onto.x(shape.x), onto.y(shape.y), {
      height: Math.max(SMALLEST_LETTERS, shape.height * onto.scale),
      align,
      ...(angleInDegrees === undefined ? {} : { angleInDegrees }),
    });
  }
}

/** Where a drawing's frame lies on the page. */
export interface Placement {
  readonly scale: number;
  x(x: number): number;
  y(y: number): number;
}

/** A placement that puts the drawing's (fromX, fromY) at the page's (toX, toY). */
export const placedAt = (fromX: number, fromY: number, toX: number, toY: number, scale = 1): Placement => ({
  scale,
  x: (x) => toX + (x - fromX) * scale,
  y: (y) => toY + (y - fromY) * scale,
});

/**
 * Only the segments near the box are drawn; dashes go on as if the whole line had been, so that they meet across pages.
 */
function drawLine(pen: Pen, { points, layer }: TracedLine, near: Box, onto: Placement): void {
  const style = lineOf[layer];
  let run: number[] = [];
  let phase = 0;
  let length = 0;
  for (let i = 2; i < points.length; i += 2) {
    const [ax, ay, bx, by] = [points[i - 2]!, points[i - 1]!, points[i]!, points[i + 1]!];
    const shows =
      Math.max(ax, bx) >= near.minX &&
      Math.min(ax, bx) <= near.maxX &&
      Math.max(ay, by) >= near.minY &&
      Math.min(ay, by) <= near.maxY;
    if (shows) {
      if (run.length === 0) {
        run.push(onto.x(ax), onto.y(ay));
        phase = length;
      }
      const [x, y] = [onto.x(bx), onto.y(by)];
      const far = Math.hypot(x - run[run.length - 2]!, y - run[run.length - 1]!) >= SHORTEST;
      if (far || i === points.length - 2) run.push(x, y);
    } else if (run.length > 0) {
      pen.line(run, style, phase);
      run = [];
    }
    length += Math.hypot(bx - ax, by - ay) * onto.scale;
  }
  if (run.length > 0) pen.line(run, style, phase);
}

const hatchesOf = once<Trace, Map<number, readonly Stroke[]>>(() => new Map());

/** The hatching of a trace, worked out once for the many pages that show parts of it. */
function hatchFor(trace: Trace, scale: number): readonly Stroke[] {
  const hatches = hatchesOf(trace);
  const strokes = hatches.get(scale) ?? hatchOf(trace, scale);
  hatches.set(scale, strokes);
  return strokes;
}
