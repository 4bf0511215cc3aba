import type { Allowances } from './allowances.js';
import { noAllowances, type Measure } from './allowances.js';
import { ratesOf } from './changes.js';
import { solved } from './linearProgramme.js';
import type { Placement } from './placement.js';
import { isShort } from './isShort.js';
import type { Skin } from './skin.js';
import { lyingIn, type Slid } from './slid.js';

/** How a strip is slid against the others, and the least that stands over the board on it then, mm. */
export interface Slide {
  readonly slid: Slid;
  readonly least: number;
}

/** No strip is slid further, mm; and how often a slide is measured before it is given up. */
const FAR = 150;
const ROUNDS = 8;
/** What rounding may take of what is asked, mm. */
const HELD = 1e-6;

/**
 * The smallest slide of a strip by which so much stands over every point on it, in whole steps of the rule, so that the
 * slide that is told does what it promises; undefined where none does. Smallest is the sum of the shift along and half
 * of what it is raised or lowered at the board's nose tip and at its tail.
 *
 * For small slides every allowance changes in proportion: the smallest is a linear programme in each of the eight
 * octants of its signs. What came out is measured, and the proportions taken anew there.
 *
 * @param others how the board lies in the strips that are not slid
 * @param now how the strip is slid already
 * @param step the finest that is told, mm
 */
export function smallestSlide(
  skin: Skin,
  measure: Measure,
  length: number,
  points: Uint32Array,
  others: Placement,
  now: Slid,
  asked: number,
  step: number,
): Slide | undefined {
  const lying = (by: readonly number[]) => lyingIn(others, further(now, by), length);
  const leastAt = (by: readonly number[], into: Allowances) => {
    measure(lying(by), into, points);
    let least = Infinity;
    for (const i of points) least = Math.min(least, into.over[i]!);
    return least;
  };
  const here = noAllowances(skin);
  // A slide that is rounded may give less than the exact one: then a little more is asked.
  for (const more of [0, step / 4, step / 2, step]) {
    let by: readonly number[] = [0, 0, 0];
    leastAt(by, here);
    for (let round = 0; round < ROUNDS; round++) {
      const rates = slideRates(ratesOf(skin, points, here, lying(by), length));
      const next = smallest(points, here, rates, by, asked + more);
      if (!next) return undefined;
      by = next;
      const tried = by.map((each) => Math.sign(each) * Math.ceil(Math.abs(each) / step - HELD) * step);
      const least = leastAt(tried, here);
      if (!isShort(least, asked)) return { slid: further(now, tried), least };
      if (!isShort(leastAt(by, here), asked + more)) break;
    }
  }
  return undefined;
}

/** Along, up at the board's nose tip, up at its tail: half of each end is how far the strip moves in all. */
const WEIGHTS = [1, 0.5, 0.5] as const;

/** What the allowances fall by as the strip moves: it moves where the board stays, so the signs are turned round. */
function slideRates(rates: Float64Array): Float64Array {
  const turned = new Float64Array(rates.length);
  for (let k = 0; k < rates.length; k += 3) {
    const [along, up, noseUp] = [rates[k]!, rates[k + 1]!, rates[k + 2]!];
    turned.set([-along, -up / 2 - noseUp, -up / 2 + noseUp], k);
  }
  return turned;
}

function smallest(
  points: Uint32Array,
  { over }: Allowances,
  rates: Float64Array,
  at: readonly number[],
  asked: number,
): readonly number[] | undefined {
  const count = points.length;
  let best: { by: readonly number[]; size: number } | undefined;
  for (let octant = 0; octant < 8; octant++) {
    const signs = [0, 1, 2].map((axis) => ((octant >> axis) & 1 ? 1 : -1));
    const rows = new Float64Array(3 * (count + 3));
    const limits = new Float64Array(count + 3);
    rows.set(rates);
    points.forEach((i, k) => {
      let limit = over[i]! - asked + HELD;
      for (let axis = 0; axis < 3; axis++) limit += rates[3 * k + axis]! * at[axis]!;
      limits[k] = limit;
    });
    signs.forEach((sign, axis) => (rows[3 * (count + axis) + axis] = -sign));
    const objective = signs.map((sign, axis) => -sign * WEIGHTS[axis]!);
    const found = solved({ objective, rows, limits, bounds: [FAR, FAR, FAR] });
    if (!found) continue;
    const size = found.reduce((sum, each, axis) => sum + Math.abs(each) * WEIGHTS[axis]!, 0);
    if (!best || size < best.size - HELD) best = { by: Array.from(found), size };
  }
  return best?.by;
}

function further({ along, up, noseUp }: Slid, by: readonly number[]): Slid {
  return { along: along + by[0]!, up: up + by[2]!, noseUp: noseUp + by[1]! - by[2]! };
}
