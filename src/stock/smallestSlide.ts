import type { Allowances } from './allowances.js';
import { noAllowances, type Measure } from './allowances.js';
import { ratesOf } from './changes.js';
import { solved } from './linearProgramme.js';
import type { Placement } from './placement.js';
import type { Skin } from './skin.js';

/** How a strip is slid against the others, and the least that stands over the board on it then, mm. */
export interface Slide {
  readonly by: Placement;
  readonly least: number;
}

/** No strip is slid further, mm; and how often a slide is measured before it is given up. */
const FAR = 150;
const ROUNDS = 8;
/** What rounding may take of what is asked, mm. */
const HELD = 1e-6;
/** What lies lower than asked by no more than this is as asked, mm. */
const MET = 1e-3;

/**
 * The smallest slide by which so much stands over every point, in whole steps of the rule, so that the slide that is
 * told does what it promises; undefined where none does. Smallest is the sum of the shifts along and up and half of
 * what the nose is raised, so that one movement is told where one does it.
 *
 * For small slides every allowance changes in proportion: the smallest is a linear programme in each of the eight
 * octants of its signs. What came out is measured, and the proportions taken anew there.
 *
 * @param from how the board lies in all strips
 * @param step the finest that is told, mm
 */
export function smallestSlide(
  skin: Skin,
  measure: Measure,
  length: number,
  points: Uint32Array,
  from: Placement,
  asked: number,
  step: number,
): Slide | undefined {
  const leastAt = (by: readonly number[], into: Allowances) => {
    measure(moved(from, by), into, points);
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
      const rates = ratesOf(skin, points, here, moved(from, by), length);
      const next = smallest(points, here, rates, by, asked + more);
      if (!next) return undefined;
      by = next;
      const tried = by.map((each) => Math.sign(each) * Math.ceil(Math.abs(each) / step - HELD) * step);
      const least = leastAt(tried, here);
      if (least >= asked - MET) return { by: placementOf(tried), least };
      if (leastAt(by, here) >= asked + more - MET) break;
    }
  }
  return undefined;
}

/** Half of what the nose is raised is how far it moves. */
const WEIGHTS = [1, 1, 0.5] as const;

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
    const found = solved({ objective, rows, limits, bounds: [FAR, FAR, 2 * FAR] });
    if (!found) continue;
    const size = found.reduce((sum, each, axis) => sum + Math.abs(each) * WEIGHTS[axis]!, 0);
    if (!best || size < best.size - HELD) best = { by: Array.from(found), size };
  }
  return best?.by;
}

const placementOf = ([along, up, noseUp]: readonly number[]): Placement => ({
  along: along!,
  up: up!,
  noseUp: noseUp!,
});

function moved({ along, up, noseUp }: Placement, by: readonly number[]): Placement {
  return { along: along + by[0]!, up: up + by[1]!, noseUp: noseUp + by[2]! };
}
