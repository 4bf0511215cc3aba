import type { Part, Shape } from './drawing.js';
import { widthOf } from './lettering.js';
import { movedPart, placesOf } from './moved.js';

/**
 * How wide a sheet that parts are laid out on becomes, and the space kept between them, mm: sheets of foam are commonly
 * 600 mm wide (common practice, no source).
 */
const WIDTH = 600;
const GAP = 8;

/**
 * Parts of a drawing side by side in rows from the upper left, in their order, none on another; each keeps its size and
 * its way up.
 */
export function layInRows(parts: readonly Part[]): Part[] {
  let [x, y, deepest] = [0, 0, 0];
  return parts.map((part) => {
    const box = extentOf([...part.shapes, ...part.captions.flatMap((caption) => placesOf(caption).next().value ?? [])]);
    const [width, height] = [box.right - box.left, box.high - box.low];
    if (x > 0 && x + width > WIDTH) [x, y, deepest] = [0, y - deepest - GAP, 0];
    const placed = movedPart(part, x - box.left, y - box.high);
    x += width + GAP;
    deepest = Math.max(deepest, height);
    return placed;
  });
}

/** The box around shapes, with room for their words, mm; of an arc its ends and its whole bulge. */
function extentOf(shapes: readonly Shape[]): { left: number; right: number; low: number; high: number } {
  const points = shapes.flatMap((shape): [number, number][] => {
    if (shape.kind === 'path') {
      return shape.vertices.flatMap(({ x, y, bulge = 0 }, i): [number, number][] => {
        const next = shape.vertices[(i + 1) % shape.vertices.length]!;
        const rise = (Math.hypot(next.x - x, next.y - y) / 2) * Math.abs(bulge);
        return [
          [x - rise, y - rise],
          [x + rise, y + rise],
        ];
      });
    }
    const half =
      shape.kind === 'circle'
        ? [shape.radius, shape.radius]
        : turnedHalves(widthOf(shape.text, shape.height) / 2, shape.height / 2, shape.angleInDegrees ?? 0);
    return [
      [shape.x - half[0]!, shape.y - half[1]!],
      [shape.x + half[0]!, shape.y + half[1]!],
    ];
  });
  const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
  return { left: Math.min(...xs), right: Math.max(...xs), low: Math.min(...ys), high: Math.max(...ys) };
}

/** Half the width and height of the upright box around a turned one. */
function turnedHalves(width: number, height: number, angleInDegrees: number): [number, number] {
  const angle = (angleInDegrees * Math.PI) / 180;
  const [cos, sin] = [Math.abs(Math.cos(angle)), Math.abs(Math.sin(angle))];
  return [width * cos + height * sin, width * sin + height * cos];
}
