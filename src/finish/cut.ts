import type { Girth } from './cloth.js';

/** The edge of a side is looked at in steps of at most this, mm; with usual laps the cut is then as true as 0.02 mm. */
const STEP = 2;

/**
 * The cut of a cloth that is laid flat: `lap` outside the edge of its side all around, also where the edge runs at a
 * slant or ends (the envelope of circles about it: its Minkowski sum with a disc).
 *
 * @param girths of the side, nose to tail
 * @param lap mm
 * @returns how far the cut is from the centreline, mm, at a place along the tape from the nose; from `-lap` on
 */
export function cutOf(girths: readonly Girth[], side: 'left' | 'right', lap: number): (along: number) => number {
  const edge = finely(girths, side);
  return (at) =>
    edge
      .filter(([along]) => Math.abs(at - along) <= lap)
      .reduce((most, [along, out]) => Math.max(most, out + Math.sqrt(lap ** 2 - (at - along) ** 2)), 0);
}

/** Out from the centreline to the edge, at places close to each other along the tape. */
function finely(girths: readonly Girth[], side: 'left' | 'right'): (readonly [along: number, out: number])[] {
  return girths.flatMap((b, i) => {
    const a = girths[i - 1];
    if (!a) return [[b.along, b[side]] as const];
    const parts = Math.max(1, Math.ceil(Math.hypot(b.along - a.along, b[side] - a[side]) / STEP));
    return Array.from({ length: parts }, (_, p) => {
      const share = (p + 1) / parts;
      return [a.along + share * (b.along - a.along), a[side] + share * (b[side] - a[side])] as const;
    });
  });
}
