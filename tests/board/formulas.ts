import type { Surface } from '../../src/board/surface.js';

/** What a surface is made of; what is left out is a level slab, 100 mm to each side, 50 mm thick. */
export interface Formulas {
  readonly length?: number;
  readonly stations?: readonly number[];
  /** Half-width at `x`, left and right, mm. */
  readonly half?: (x: number, side: 0 | 1) => number;
  /** Half-width of a swallow's notch at `x`, mm, and where it begins. */
  readonly inner?: (x: number) => number;
  readonly notchAt?: number;
  readonly bottom?: (x: number) => number;
  readonly thickness?: number;
  /** The half-section at `v`, freed of size. */
  readonly section?: (v: number, x: number) => { across: number; up: number };
  readonly raised?: (x: number, y: number, up: number) => number;
}

/** From the keel straight out, straight up, straight in again. */
export const boxSection = (v: number) => ({ across: v < 1 ? v : v < 2 ? 1 : 3 - v, up: v < 1 ? 0 : v < 2 ? v - 1 : 1 });

/** A surface given by formulas, for holding what reads one against closed forms. */
export function surfaceBy(given: Formulas): Surface {
  const { length = 1000, stations = [0, length], half = () => 100, inner = () => 0, notchAt = length } = given;
  const { bottom = () => 0, thickness = 50, section = boxSection, raised } = given;
  const right = { outer: (x: number) => half(x, 1), inner, notchAt };
  const alike = [0, 0.37, 1].every((share) => half(share * length, 0) === half(share * length, 1));
  return {
    length,
    outlines: [alike ? right : { ...right, outer: (x: number) => half(x, 0) }, right],
    bottom,
    thickness: () => thickness,
    stations,
    ...(raised && { raised }),
    lengthwise: (vs) => ({
      at: (x) => {
        const each = Array.from(vs, (v) => section(v, x));
        return {
          across: Float64Array.from(each, ({ across }) => across),
          up: Float64Array.from(each, ({ up }) => up),
        };
      },
    }),
  };
}
