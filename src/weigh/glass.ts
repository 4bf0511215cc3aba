import type { Grid } from '../board/grid.js';
import type { GlassSpec } from '../job/spec/finish.js';
import { laminateOf } from './modulus.js';
import type { SectionPart } from './bending.js';

/** The glass around the section at each row of the grid, as one part; both cloths where they lap around the rail. */
export function glassParts(grid: Grid, glass: GlassSpec): SectionPart[] {
  const sum = (layers: readonly number[]) => layers.reduce((a, b) => a + b, 0);
  const deck = laminateOf(sum(glass.deck), glass.resin);
  const bottom = laminateOf(sum(glass.bottom), glass.resin);
  const coat = laminateOf(glass.hotCoatCloth, glass.resin);
  const { rows, columns, apex, positions: p } = grid;
  return Array.from({ length: rows }, (_, row) => {
    let [area, firstMoment, secondMoment] = [0, 0, 0];
    for (const side of [0, 1]) {
      const first = (row * 2 + side) * columns;
      for (const [from, to, step, own, other] of [
        [apex, columns - 1, 1, deck, bottom],
        [apex, 0, -1, bottom, deck],
      ] as const) {
        let away = 0;
        for (let i = from; i !== to; i += step) {
          const a = 3 * (first + i);
          const b = a + 3 * step;
          const length = Math.hypot(p[b + 1]! - p[a + 1]!, p[b + 2]! - p[a + 2]!);
          const lapped = Math.max(0, Math.min(length, glass.lap - away));
          const dA = length * (own.thickness + coat.thickness) + lapped * other.thickness;
          const za = p[a + 2]!;
          const zb = p[b + 2]!;
          area += dA;
          firstMoment += (dA * (za + zb)) / 2;
          secondMoment += (dA * (za * za + za * zb + zb * zb)) / 3;
          away += length;
        }
      }
    }
    // All laminates of a schedule have one share of resin, hence one modulus.
    return { modulus: deck.modulus, area, firstMoment, secondMoment };
  });
}
