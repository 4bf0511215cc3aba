import type { Caption, Part, Shape } from './drawing.js';

/** A part moved as it is, wherever its words may stand, mm. Its words are moved when a place for them is tried. */
export function movedPart({ name, shapes, captions }: Part, dx: number, dy: number): Part {
  return {
    name,
    shapes: shapes.map((shape) => moved(shape, dx, dy)),
    captions: captions.map(({ by: [x, y] = [0, 0], ...caption }) => ({ ...caption, by: [x + dx, y + dy] })),
  };
}

/** The places of a caption where they are by now, one after the other. */
export function* placesOf({ places, by }: Caption): Generator<readonly Shape[], void, undefined> {
  for (const place of places) yield by ? place.map((shape) => moved(shape, ...by)) : place;
}

/** A shape moved as it is, mm. */
function moved<S extends Shape>(shape: S, dx: number, dy: number): S {
  return shape.kind === 'path'
    ? { ...shape, vertices: shape.vertices.map((v) => ({ ...v, x: v.x + dx, y: v.y + dy })) }
    : { ...shape, x: shape.x + dx, y: shape.y + dy };
}
