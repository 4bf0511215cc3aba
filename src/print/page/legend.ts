import type { Drawing, Layer, Legend, Shape } from '../../sheet/drawing.js';
import { circle, line, polygon } from '../../sheet/primitives.js';
import { drawTrace, placedAt } from '../pen/drawTrace.js';
import type { Measure, Pen } from '../pen/pen.js';
import { traceOf } from '../trace/trace.js';

/**
 * A sample of a line: so long that a whole period of its dashes shows; and the air behind it and behind its words, mm.
 */
const SAMPLE = 13;
const AIR = 1.2;
const APART = 3.5;
/** Heights of its letters, the first that fits, mm; in one line, or in two so far apart. */
const LETTERS = [2.5, 2.3, 2.1, 1.9, 1.8, 1.6, 1.4] as const;
const PITCH = 3.3;

/**
 * Where a legend stands: a line of entries from `left` to `right` at `y`, another over it, clear of what stands at
 * `middle`, mm.
 */
export interface LegendRoom {
  readonly left: number;
  readonly right: number;
  readonly middle: number;
  readonly y: number;
}

/** Draws what the kinds of line on a page mean, each with a sample of it. */
export function drawLegend(pen: Pen, legend: Legend, room: LegendRoom, measure: Measure): void {
  const ways = LETTERS.flatMap((letters) => [1, 2].map((lines) => ({ letters, lines })));
  const placed = ways.map((way) => ({ ...way, places: layOut(legend, room, way, measure) }));
  const { letters, places } = placed.find((way) => way.places.every(({ end }) => end <= room.right)) ?? placed.at(-1)!;
  legend.forEach(([layer, meaning], i) => {
    const { x, up } = places[i]!;
    drawSample(pen, layer, x, room.y + up);
    pen.text(meaning, x + SAMPLE + AIR, room.y + up, { height: letters });
  });
}

/** Where each entry begins and ends, and how far over the first line it stands. */
function layOut(
  legend: Legend,
  room: LegendRoom,
  { letters, lines }: { readonly letters: number; readonly lines: number },
  measure: Measure,
): { readonly x: number; readonly end: number; readonly up: number }[] {
  const upper = lines === 1 ? 0 : Math.ceil(legend.length / lines);
  let x = room.left;
  return legend.map(([, meaning], i) => {
    if (i === upper) x = room.left;
    const width = SAMPLE + AIR + measure(meaning, false) * letters;
    if (x < room.middle + AIR && x + width > room.middle - AIR) x = room.middle + AIR;
    const place = { x, end: x + width, up: i < upper ? PITCH : 0 };
    x = place.end + APART;
    return place;
  });
}

function drawSample(pen: Pen, layer: Layer, x: number, y: number): void {
  const drawing: Drawing = { id: layer, title: '', notes: [], shapes: sampleOf(layer) };
  const box = { minX: 0, minY: -2, maxX: SAMPLE, maxY: 2 };
  drawTrace(pen, traceOf(drawing), box, placedAt(0, 0, x, y));
}

/** A line as it is drawn; what is drawn as a spot or an area as a small one. */
function sampleOf(layer: Layer): Shape[] {
  if (layer === 'dot') return [circle(layer, SAMPLE - 3, 0, 1.8, 'dark')];
  if (layer !== 'web') return [line(layer, [0, 0], [SAMPLE, 0])];
  const corners = [
    [3, -1.8],
    [SAMPLE, -1.8],
    [SAMPLE, 1.8],
    [3, 1.8],
  ] as const;
  return [polygon(layer, corners, 'dark')];
}
