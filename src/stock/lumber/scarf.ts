import type { Point } from '../../contour/point.js';
import type { Part } from './nest.js';

/**
 * Parts of a profile too long for the longest plank there is, to be scarfed: each as long as the others but for the
 * scarfs, which go through the thickness and take `scarf` times it. Every other profile has its joints further forward,
 * so that those of neighbours do not lie next to each other.
 *
 * @param longest the longest plank, mm
 * @param turn 0 or 1: which way the joints are shifted
 */
export function scarfed({ name, outline, thickness }: Part, longest: number, scarf: number, turn: 0 | 1): Part[] {
  const from = Math.min(...outline.map(([s]) => s));
  const to = Math.max(...outline.map(([s]) => s));
  const overlap = scarf * thickness;
  // Planks that are hardly longer than their scarfs make no stringer.
  if (longest < LEAST_TIMES * overlap) return [{ name, outline, thickness }];
  const count = Math.ceil((to - from - overlap) / (longest - overlap));
  if (!Number.isFinite(count) || count < 2) return [{ name, outline, thickness }];
  const each = (to - from + (count - 1) * overlap) / count;
  const shift = Math.min((longest - each) / 2, STAGGER / 2) * (turn === 0 ? 1 : -1);
  return Array.from({ length: count }, (_, i): Part => {
    const begin = i === 0 ? from : from + i * (each - overlap) + shift;
    const end = i === count - 1 ? to : from + i * (each - overlap) + each + shift;
    return {
      name: `${name} ${i + 1}/${count}`,
      outline: between(outline, begin, end),
      thickness,
      along: [begin, end],
    };
  });
}

/** A part is at least so many times as long as its scarf; common practice, no source. */
const LEAST_TIMES = 4;

/** How far the joints of neighbours are kept apart, mm, where planks are long enough; common practice, no source. */
const STAGGER = 600;

/** What of a closed outline lies between two places along it (I. Sutherland and G. Hodgman, CACM 17, 1974). */
function between(outline: readonly Point[], from: number, to: number): Point[] {
  const clipped = (points: readonly Point[], at: number, hand: 1 | -1): Point[] =>
    points.flatMap((b, i): Point[] => {
      const a = points[(i + points.length - 1) % points.length]!;
      const [insideA, insideB] = [hand * (a[0] - at) >= 0, hand * (b[0] - at) >= 0];
      const share = (at - a[0]) / (b[0] - a[0]);
      const cut: Point[] = insideA === insideB ? [] : [[at, a[1] + share * (b[1] - a[1])]];
      return insideB ? [...cut, b] : cut;
    });
  return clipped(clipped(outline, from, 1), to, -1);
}
