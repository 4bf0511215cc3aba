import type { Point } from '../../contour/point.js';
import type { Face } from '../../layup/layup.js';
import { reversed } from '../../contour/reversed.js';
import type { Vertex } from '../../contour/vertex.js';

/**
 * A face as it lies on the bench, seen by the one who marks it, deck up: `x` right, `y` = z up. Seen from the left of a
 * piece the nose is on the left; seen from its right it is on the right, and `x` runs against `s`.
 */
export interface FaceOnBench {
  readonly noseAt: 'left' | 'right';
  x(s: number): number;
  point(s: number, z: number): Point;
  /** A contour of the face frame, kept counter-clockwise. */
  contour(vertices: readonly Vertex[]): Vertex[];
}

/** @param length the board's, mm: a sheet whose nose is on the right begins where the tail is */
export function onBench(face: Face, length: number): FaceOnBench {
  const toTheRight = face.inward[1] > 0;
  const end = length / face.along[0];
  const x = (s: number) => (toTheRight ? s : end - s);
  return {
    noseAt: toTheRight ? 'left' : 'right',
    x,
    point: (s, z) => [x(s), z],
    contour: (vertices) => (toTheRight ? [...vertices] : reversed(vertices.map((v) => ({ ...v, x: x(v.x) })))),
  };
}
