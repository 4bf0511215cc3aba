import type { Trace, TracedLine } from './trace.js';
import { overlaps, type Box } from './box.js';

/**
 * Distance between hatching lines, mm: all above the smallest gap of ISO 128-2, 6.1 (0.7 mm), and told apart from a
 * metre away.
 */
const SPACING = { light: 7, medium: 4, dark: 2 } as const;

/** A hatching line, mm. */
export interface Stroke {
  readonly x1: number;
  readonly y1: number;
  readonly x2: number;
  readonly y2: number;
}

/**
 * The hatching of a drawing: lines at 45° inside each hatched shape, left out where words stand. They lie on one grid,
 * so that the hatching of a shape cut by a page's edge goes on over the next page.
 *
 * @param scale at which the drawing is printed; the lines keep their distance on the paper.
 */
export function hatchOf(trace: Trace, scale = 1): readonly Stroke[] {
  return trace.lines.flatMap((line) => strokesIn(line, trace, scale));
}

/** What is left of a hatching line outside of boxes, mm. */
export function strokeOutside(stroke: Stroke, boxes: readonly Box[]): readonly Stroke[] {
  // Along the line, y = x - u: within a box where x lies between both pairs of its sides.
  const u = stroke.x1 - stroke.y1;
  const holes = boxes
    .map(({ minX, minY, maxX, maxY }) => [Math.max(minX, minY + u), Math.min(maxX, maxY + u)])
    .filter(([from, to]) => from! < to!);
  return without([stroke.x1, stroke.x2], holes).map(([x1, x2]) => ({ x1, y1: x1 - u, x2, y2: x2 - u }));
}

function strokesIn(line: TracedLine, trace: Trace, scale: number): Stroke[] {
  const tone = line.shape.hatch;
  if (!tone || !line.closed) return [];
  const words = trace.texts.filter((text) => overlaps(text.box, line.box)).map((text) => text.corners);
  // With u = x - y across the lines and v = x + y along them, a hatching line is u = constant.
  const step = (SPACING[tone] * Math.SQRT2) / scale;
  const { minX, minY, maxX, maxY } = line.box;
  const strokes: Stroke[] = [];
  for (let k = Math.ceil((minX - maxY) / step); k * step <= maxX - minY; k++) {
    const u = k * step;
    const inside = crossings(line.points, u);
    const holes = words.map((corners) => crossings(corners, u));
    for (let i = 0; i + 1 < inside.length; i += 2) {
      for (const [v1, v2] of without([inside[i]!, inside[i + 1]!], holes)) {
        strokes.push({ x1: (u + v1) / 2, y1: (v1 - u) / 2, x2: (u + v2) / 2, y2: (v2 - u) / 2 });
      }
    }
  }
  return strokes;
}

/** Where a closed contour crosses the line x - y = u, as rising values of x + y. */
function crossings(points: Float64Array, u: number): number[] {
  const found: number[] = [];
  const count = points.length / 2;
  for (let i = 0; i < count; i++) {
    const j = (i + 1) % count;
    const [ax, ay, bx, by] = [points[2 * i]!, points[2 * i + 1]!, points[2 * j]!, points[2 * j + 1]!];
    const ua = ax - ay;
    const ub = bx - by;
    if (ua <= u === ub <= u) continue;
    const t = (u - ua) / (ub - ua);
    found.push(ax + ay + t * (bx + by - ax - ay));
  }
  return found.sort((a, b) => a - b);
}

function without(span: [number, number], holes: readonly number[][]): [number, number][] {
  let spans = [span];
  for (const hole of holes) {
    if (hole.length < 2) continue;
    const [from, to] = [hole[0]!, hole[hole.length - 1]!];
    spans = spans.flatMap(([a, b]): [number, number][] => {
      if (to <= a || from >= b) return [[a, b]];
      const rest: [number, number][] = [];
      if (from > a) rest.push([a, from]);
      if (to < b) rest.push([to, b]);
      return rest;
    });
  }
  return spans;
}
