import type { Vertex } from '../length/vertex.js';
import type { CircleShape, Drawing, Layer, PathShape, TextShape } from '../sheet/drawing.js';
import { arcBetween, chordsFor } from './arc.js';
import type { Box } from './box.js';
import { boxOfPoints } from './box.js';
import { cornersOf } from './lettering.js';

/** Chords leave an arc by no more than this, mm: half a dot at 600 dots an inch. */
const CHORD_TOLERANCE = 0.02;

/** A drawing as straight lines: what is tiled, hatched and printed. SVG and DXF keep the true arcs. */
export interface Trace {
  readonly lines: readonly TracedLine[];
  readonly texts: readonly TracedText[];
}

export interface TracedLine {
  readonly layer: Layer;
  readonly shape: PathShape | CircleShape;
  readonly closed: boolean;
  /** x0, y0, x1, y1, …; a closed line repeats its first point at the end. */
  readonly points: Float64Array;
  readonly box: Box;
}

export interface TracedText {
  readonly shape: TextShape;
  /** The four corners of its box, x0, y0, … */
  readonly corners: Float64Array;
  readonly box: Box;
}

/** Traces every shape of a drawing, mm in the drawing's own frame. Throws when a coordinate is not a finite number. */
export function traceOf(drawing: Drawing): Trace {
  const lines: TracedLine[] = [];
  const texts: TracedText[] = [];
  for (const shape of drawing.shapes) {
    if (shape.kind === 'text') {
      const corners = finite(cornersOf(shape), drawing);
      texts.push({ shape, corners, box: boxOfPoints(corners) });
      continue;
    }
    const closed = shape.kind === 'circle' || shape.closed;
    const points = finite(shape.kind === 'circle' ? circlePoints(shape) : pathPoints(shape.vertices, closed), drawing);
    if (points.length > 0) lines.push({ layer: shape.layer, shape, closed, points, box: boxOfPoints(points) });
  }
  return { lines, texts };
}

/** The points along a contour with its arcs cut into chords; a closed one returns to its first point. */
export function pathPoints(vertices: readonly Vertex[], closed: boolean): Float64Array {
  const out: number[] = [];
  const last = closed ? vertices.length : vertices.length - 1;
  for (let i = 0; i < vertices.length; i++) {
    const a = vertices[i]!;
    out.push(a.x, a.y);
    const arc = i < last ? arcBetween(a, vertices[(i + 1) % vertices.length]!) : undefined;
    if (!arc) continue;
    const chords = chordsFor(arc.radius, arc.sweep, CHORD_TOLERANCE);
    for (let k = 1; k < chords; k++) {
      const angle = arc.start + (arc.sweep * k) / chords;
      out.push(arc.cx + arc.radius * Math.cos(angle), arc.cy + arc.radius * Math.sin(angle));
    }
  }
  if (closed && vertices.length > 0) out.push(vertices[0]!.x, vertices[0]!.y);
  return Float64Array.from(out);
}

function circlePoints({ x, y, radius }: CircleShape): Float64Array {
  const chords = Math.max(8, chordsFor(radius, 2 * Math.PI, CHORD_TOLERANCE));
  const out = new Float64Array(2 * (chords + 1));
  for (let k = 0; k <= chords; k++) {
    const angle = (2 * Math.PI * (k % chords)) / chords;
    out[2 * k] = x + radius * Math.cos(angle);
    out[2 * k + 1] = y + radius * Math.sin(angle);
  }
  return out;
}

function finite(points: Float64Array, drawing: Drawing): Float64Array {
  for (const value of points) {
    if (!Number.isFinite(value)) throw new Error(`drawing ${drawing.id} has a coordinate that is not a number`);
  }
  return points;
}
