import { arcBetween, chordsFor } from './arc.js';
import type { Vertex } from './vertex.js';

/** Chords leave an arc by no more than this, mm: half a dot at 600 dots an inch. */
export const CHORD_TOLERANCE = 0.02;

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
