import { flattened, lineToPolygon, type Corner, type Pair } from './plane.js';

/**
 * Whether a round cutter rolls around the whole inside of a closed counter-clockwise contour and leaves no more than
 * `spare` mm anywhere. Its middle runs beside every straight side, as far as the corners let it; on that line nothing
 * else may be nearer than the radius. Quick; a no may be wrong where the cutter reaches over a short side, and is then
 * for the exact test to say.
 */
export function rollsAround(contour: readonly Corner[], radius: number, spare: number): boolean {
  const sides = contour.map((a, i): Side => {
    const b = contour[(i + 1) % contour.length]!;
    const half = a.bulge ? 2 * Math.atan(a.bulge) : 0;
    const along = Math.atan2(b.y - a.y, b.x - a.x);
    const length = Math.hypot(b.x - a.x, b.y - a.y);
    return { a, b, length, begins: along - half, ends: along + half, arc: half && length / 2 / Math.sin(half) };
  });
  if (sides.some(({ arc }) => arc > 0 && arc < radius - spare)) return false;
  const turns = sides.map(({ begins }, i) => turnFrom(sides[(i + sides.length - 1) % sides.length]!.ends, begins));
  if (turns.some((turn) => turn > 0 && radius * (1 / Math.cos(turn / 2) - 1) > spare)) return false;
  const taken = turns.map((turn) => radius * Math.tan(Math.max(0, turn) / 2));
  const edge = flattened(contour);
  return sides.every(({ a, length, begins, arc }, i) => {
    if (arc) return true;
    const [from, to] = [taken[i]!, length - taken[(i + 1) % sides.length]!];
    if (to < from) return false;
    const middle = (far: number): Pair => [
      a.x + far * Math.cos(begins) - radius * Math.sin(begins),
      a.y + far * Math.sin(begins) + radius * Math.cos(begins),
    ];
    return -lineToPolygon(middle(from), middle(to), edge) >= radius - spare;
  });
}

/**
 * One side of a contour: directions at its ends, radians; `arc` is its radius, 0 where it is straight, negative where
 * it turns right.
 */
interface Side {
  readonly a: Corner;
  readonly b: Corner;
  readonly length: number;
  readonly begins: number;
  readonly ends: number;
  readonly arc: number;
}

/** The turn between two directions, to the left where positive, radians. */
function turnFrom(before: number, after: number): number {
  return Math.atan2(Math.sin(after - before), Math.cos(after - before));
}
