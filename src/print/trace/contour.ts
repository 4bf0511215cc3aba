import type { Vertex } from '../../contour/vertex.js';
import type { Drawing, Layer, PathShape, CircleShape } from '../../sheet/drawing.js';

/** Layers that a machine cuts along. All others are for reading. */
export const cutLayers: readonly Layer[] = ['cut', 'chamber', 'guide', 'block'];

/** Points nearer than this are one point, mm: a tenth of what a cutter places. */
export const SAME_POINT = 0.01;

export interface Contour {
  readonly layer: Layer;
  readonly shape: PathShape | CircleShape;
  /** Which shape of the drawing it is, from 1, for messages. */
  readonly number: number;
}

/** What would be cut, in the drawing's order. */
export function contoursOf(drawing: Drawing): readonly Contour[] {
  if (drawing.isNotCut) return [];
  return drawing.shapes.flatMap((shape, i) =>
    shape.kind !== 'text' && cutLayers.includes(shape.layer) ? [{ layer: shape.layer, shape, number: i + 1 }] : [],
  );
}

/** A path's vertices without points that fall onto the one before. A closed one does not repeat its first point. */
export function cleanVertices({ vertices, closed }: PathShape): readonly Vertex[] {
  const same = (a: Vertex, b: Vertex): boolean => Math.hypot(a.x - b.x, a.y - b.y) < SAME_POINT;
  const kept = vertices.filter((vertex, i) => {
    const next = vertices[i + 1];
    return next === undefined || !same(vertex, next);
  });
  while (closed && kept.length > 1 && same(kept[0]!, kept[kept.length - 1]!)) kept.pop();
  return kept;
}
