import type { CircleShape, PathShape } from '../../sheet/drawing.js';
import { chordsFor } from '../../contour/arc.js';
import { CHORD_TOLERANCE, pathPoints } from '../../contour/chords.js';

/**
 * The points along a line of a drawing, its arcs cut into chords: x0, y0, x1, y1, …; a closed one repeats its first
 * point at the end.
 */
export function linePoints(shape: PathShape | CircleShape): Float64Array {
  return shape.kind === 'circle' ? circlePoints(shape) : pathPoints(shape.vertices, shape.closed);
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
