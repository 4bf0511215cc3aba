import { monotone, type Curve } from './monotone.js';
import type { Surface } from './surface.js';

/** How far the true board differs from the drawn one at a place, mm: its deck or bottom upward, its rails outward. */
export type Correction =
  | { readonly part: 'deck' | 'bottom'; readonly x: number; readonly y: number; readonly by: number }
  /** `side` 0 is the left, 1 the right. */
  | { readonly part: 'rail'; readonly side: 0 | 1; readonly x: number; readonly by: number };

/**
 * A correction fades toward the drawing over about this distance, mm: what was not measured is taken to be as drawn.
 */
const FADE = 600;

/**
 * The surface drawn smoothly through corrections: hit exactly where they were measured, fading to the drawing away from
 * them, never more than the largest of them.
 *
 * Deck and bottom by inverse-distance weights with the drawing as one more datum at the distance `FADE` (D. Shepard, "A
 * two-dimensional interpolation function for irregularly-spaced data", Proc. 23rd ACM National Conference, 1968); rails
 * by a monotone cubic along the board that is 0 at both tips.
 */
export function corrected(surface: Surface, corrections: readonly Correction[]): Surface {
  if (corrections.length === 0) return surface;
  const deck = spread(corrections.flatMap((c) => (c.part === 'deck' ? [c] : [])));
  const bottom = spread(corrections.flatMap((c) => (c.part === 'bottom' ? [c] : [])));
  const outlines = ([0, 1] as const).map((side) => {
    const outline = surface.outlines[side];
    const widened = along(
      corrections.flatMap((c) => (c.part === 'rail' && c.side === side ? [c] : [])),
      surface.length,
    );
    return { ...outline, outer: (x: number) => Math.max(outline.inner(x), outline.outer(x) + widened(x)) };
  });
  const places = corrections.map((c) => c.x).filter((x) => x >= 0 && x <= surface.length);
  return {
    ...surface,
    outlines: [outlines[0]!, outlines[1]!],
    stations: [...new Set([...surface.stations, ...places])].sort((a, b) => a - b),
    raised(x, y, up) {
      const low = bottom(x, y);
      return low + (deck(x, y) - low) * Math.min(1, Math.max(0, up));
    },
  };
}

function spread(data: readonly { x: number; y: number; by: number }[]): (x: number, y: number) => number {
  return (x, y) => {
    let weights = 1 / FADE ** 2;
    let sum = 0;
    for (const datum of data) {
      const square = (x - datum.x) ** 2 + (y - datum.y) ** 2;
      if (square < 1e-12) return datum.by;
      weights += 1 / square;
      sum += datum.by / square;
    }
    return sum / weights;
  };
}

/** Corrections at one place are taken together as their mean. */
function along(data: readonly { x: number; by: number }[], length: number): Curve {
  const places = new Map<number, number[]>([
    [0, [0]],
    [length, [0]],
  ]);
  for (const { x, by } of data) if (x > 0 && x < length) places.set(x, [...(places.get(x) ?? []), by]);
  const sorted = [...places].sort(([a], [b]) => a - b);
  return monotone(
    sorted.map(([x]) => x),
    sorted.map(([, each]) => each.reduce((sum, by) => sum + by, 0) / each.length),
  );
}
