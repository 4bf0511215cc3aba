import { cutNotch } from '../../src/board/notch.js';
import { pointsAcross, type Surface } from '../../src/board/surface.js';

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

/** The points of a surface at some rows and columns, a notch cut out. */
export function gridBy(surface: Surface, xs: readonly number[], vs: readonly number[]) {
  const positions = new Float64Array(xs.length * 2 * vs.length * 3);
  const { inner, notchAt } = surface.outlines[1];
  xs.forEach((x, row) => {
    for (const side of [0, 1] as const) {
      const first = (row * 2 + side) * vs.length;
      pointsAcross(surface, side, x, surface.lengthwise(vs).at(x, side), positions, 3 * first);
      if (x >= notchAt) cutNotch(positions, first, vs.length, vs.indexOf(2), inner(x));
    }
  });
  const notchRow = notchAt < surface.length ? xs.indexOf(notchAt) : xs.length;
  const [rows, columns, apex] = [xs.length, vs.length, vs.indexOf(2)];
  return { xs: Float64Array.from(xs), vs: Float64Array.from(vs), positions, rows, columns, apex, notchRow };
}
