import type { Board } from '../board/board.js';

/** How a shaped board differs from the drawn one at a place, mm: positive where there is more of it. */
export interface ShapedBy {
  /** From the nose tip of the drawing. */
  readonly x: number;
  /** Deck and bottom on the centreline, and the rails outward. */
  readonly deck: number;
  readonly bottom: number;
  readonly left: number;
  readonly right: number;
}

/** Places at which they are compared, evenly from nose to tail, tips left out. */
const PLACES = 12;

/** What a board was shaped by, against how it was drawn, from nose to tail. */
export function shapedBy(drawn: Pick<Board, 'surface'>, shaped: Pick<Board, 'surface'>): ShapedBy[] {
  const [before, now] = [drawn.surface, shaped.surface];
  const deck = ({ bottom, thickness }: Board['surface'], x: number) => bottom(x) + thickness(x);
  return Array.from({ length: PLACES }, (_, i) => {
    const x = (before.length * (i + 0.5)) / PLACES;
    const rail = (side: 0 | 1) => now.outlines[side].outer(x) - before.outlines[side].outer(x);
    return {
      x,
      deck: deck(now, x) - deck(before, x),
      bottom: before.bottom(x) - now.bottom(x),
      left: rail(0),
      right: rail(1),
    };
  });
}
