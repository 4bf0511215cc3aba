import type { Point } from '../contour/point.js';
import type { Vertex } from '../contour/vertex.js';
import type { CircleShape, Layer, PathShape, TextShape } from './drawing.js';

type Hatch = PathShape['hatch'];

export function line(layer: Layer, ...points: readonly Point[]): PathShape {
  return { kind: 'path', layer, closed: false, vertices: points.map(([x, y]) => ({ x, y })) };
}

export function polygon(layer: Layer, points: readonly Point[], hatch?: Hatch): PathShape {
  return contour(
    layer,
    points.map(([x, y]) => ({ x, y })),
    hatch,
  );
}

export function contour(layer: Layer, vertices: readonly Vertex[], hatch?: Hatch): PathShape {
  return { kind: 'path', layer, closed: true, vertices, ...(hatch && { hatch }) };
}

export function circle(layer: Layer, x: number, y: number, radius: number, hatch?: Hatch): CircleShape {
  return { kind: 'circle', layer, x, y, radius, ...(hatch && { hatch }) };
}

/** A line of text; `align` says which part of it stands at `at`. */
export function text(
  words: string,
  at: Point,
  height: number,
  align: TextShape['align'] = 'centre',
  more: { readonly layer?: Layer; readonly angleInDegrees?: number } = {},
): TextShape {
  return { kind: 'text', layer: 'label', text: words, x: at[0], y: at[1], height, align, ...more };
}

/**
 * An arrow as an outline, its point at `tip`, as long as `length` and as wide as `width` at its head, mm; `toward` is a
 * unit vector.
 */
export function blockArrow(tip: Point, toward: Point, length: number, width: number): PathShape {
  const [tx, ty] = tip;
  const [ux, uy] = toward;
  const at = (back: number, out: number): Point => [tx - back * ux - out * uy, ty - back * uy + out * ux];
  const head = Math.min(width * 0.7, length * 0.5);
  const shaft = width * 0.3;
  return polygon('label', [
    at(0, 0),
    at(head, width / 2),
    at(head, shaft),
    at(length, shaft),
    at(length, -shaft),
    at(head, -shaft),
    at(head, -width / 2),
  ]);
}
