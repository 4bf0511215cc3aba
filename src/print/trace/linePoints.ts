import type { Vertex } from '../../contour/vertex.js';
import type { CircleShape, PathShape } from '../../sheet/drawing.js';
import { arcBetween, chordsFor } from './arc.js';

/** Chords leave an arc by no more than this, mm: half a dot at 600 dots an inch. */
const CHORD_TOLERANCE = 0.02;

/**
 * The points along a line of a drawing, its arcs cut into chords: x0, y0, x1, y1, …; a closed one repeats its first
 * point at the end.
 */
export function linePoints(shape: PathShape | CircleShape): Float64Array {
  return shape.kind === 'circle' ? circlePoints(shape) : pathPoints(shape.vertices, shape.closed);
}

/**
 * The points along a contour with its arcs cut into chords; a closed one returns to its first point. `tolerance`, mm:
 * how far a chord may leave its arc.
 */
export function pathPoints(vertices: readonly Vertex[], closed: boolean, tolerance = CHORD_TOLERANCE): Float64Array {
  const out: number[] = [];
  const last = closed ? vertices.length : vertices.length - 1;
  for (let i = 0; i < vertices.length; i++) {
    const a = vertices[i]!;
    out.push(a.x, a.y);
    const arc = i < last ? arcBetween(a, vertices[(i + 1) % vertices.length]!) : undefined;
    if (!arc) continue;
    const chords = chordsFor(arc.radius, arc.sweep, tolerance);
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
