import type { Point } from '../contour/point.js';
import type { FaceLine } from './faceLine.js';

/**
 * The finished deck and bottom line of a face between two places along it, nose to tail, `[s, z]`, mm.
 *
 * @param from, to places with board on the whole way between them
 */
export function edgesBetween(
  { loops, heightsAt }: FaceLine,
  from: number,
  to: number,
): { readonly deck: readonly Point[]; readonly bottom: readonly Point[] } {
  const middle = (s: number): number => {
    const { deck, bottom } = heightsAt(s)!;
    return (deck + bottom) / 2;
  };
  const between = loops
    .flat()
    .filter(([s]) => s > from && s < to)
    .sort(([a], [b]) => a - b);
  const [first, last] = [heightsAt(from)!, heightsAt(to)!];
  return {
    deck: [[from, first.deck], ...between.filter(([s, z]) => z > middle(s)), [to, last.deck]],
    bottom: [[from, first.bottom], ...between.filter(([s, z]) => z <= middle(s)), [to, last.bottom]],
  };
}
