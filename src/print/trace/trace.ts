import type { CircleShape, Drawing, Layer, PathShape, TextShape } from '../../sheet/drawing.js';
import type { Box } from './box.js';
import { boxOfPoints } from './box.js';
import { cornersOf } from './lettering.js';
import { linePoints } from './linePoints.js';
import { settled } from './settle.js';

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
  for (const shape of settled(drawing).shapes) {
    if (shape.kind === 'text') {
      const corners = finite(cornersOf(shape), drawing);
      texts.push({ shape, corners, box: boxOfPoints(corners) });
      continue;
    }
    const closed = shape.kind === 'circle' || shape.closed;
    const points = finite(linePoints(shape), drawing);
    if (points.length > 0) lines.push({ layer: shape.layer, shape, closed, points, box: boxOfPoints(points) });
  }
  return { lines, texts };
}

function finite(points: Float64Array, drawing: Drawing): Float64Array {
  for (const value of points) {
    if (!Number.isFinite(value)) throw new Error(`drawing ${drawing.id} has a coordinate that is not a number`);
  }
  return points;
}
