import { changes, movedBy, type Change } from './changes.js';
import { noAllowances, type Allowances, type Measure } from './allowances.js';
import type { Placement } from './placement.js';
import { SIDES, type Skin } from './skin.js';

/**
 * The placement with the largest least allowance. Where one side holds that down whatever is done about it (a rail at
 * the widest point), the others are made as large as they can be after it, one side after the other.
 *
 * For small changes every allowance changes in proportion, so that the best change is a linear programme; it is solved
 * exactly, what came out is measured, and the reach of the next change follows from how much of the promised gain there
 * was (sequential linear programming with a trust region: R. Fletcher and E. Sainz de la Maza, "Nonlinear programming
 * and nonsmooth optimization by successive linear programming", Mathematical Programming 43, 1989). On the way only
 * points that may be the least are measured again; at the end all are.
 *
 * A blank with hollows may have more than one place that no small change betters: it is begun from several.
 *
 * @param points the points of the skin that count
 * @param starts where to begin
 */
export function bestPlacement(
  skin: Skin,
  measure: Measure,
  length: number,
  points: Uint32Array,
  starts: readonly Placement[],
): { readonly placement: Placement; readonly allowances: Allowances } {
  const sides = [...new Set(Array.from(points, (i) => skin.side[i]!))];
  const measured = (placement: Placement, of: Uint32Array): State => {
    const allowances = noAllowances(skin);
    measure(placement, allowances, of);
    return { placement, allowances, worth: levelsOf(skin, of, allowances, sides) };
  };
  const better = (state: State, of: Uint32Array) =>
    (['least', 'sides'] as const).reduce((so, stage) => improved(stage, so, skin, measure, length, of, sides), state);

  const few = points.filter((_, i) => i % ROUGHLY === 0);
  const rough = starts.map((start) => improved('least', measured(start, few), skin, measure, length, few, sides));
  const best = rough.reduce((a, b) => (b.worth[0]! > a.worth[0]! ? b : a));
  let found = measured(best.placement, points);
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const { placement } = better(found, points);
    if (placement === found.placement) break;
    found = measured(placement, points);
  }
  return found;
}

/** One point in so many is enough to find where about the placement is. */
const ROUGHLY = 16;

/** `worth` are the least allowances of the sides, the smallest first. */
interface State {
  readonly placement: Placement;
  readonly allowances: Allowances;
  readonly worth: readonly number[];
}

/** How far the first changes may go, mm; and what is finer than a mark. */
const FIRST_REACH = { least: 60, sides: 20 };
const FINEST = 0.02;
const MOST_ROUNDS = 16;
/** A gain of less is none, mm. */
const GAIN = 0.005;
/** What a change may do beyond its proportion, as a share of it: points so much nearer are measured. */
const BEYOND = 0.1;

function improved(
  stage: keyof typeof FIRST_REACH,
  state: State,
  skin: Skin,
  measure: Measure,
  length: number,
  points: Uint32Array,
  sides: readonly number[],
): State {
  let reach = FIRST_REACH[stage];
  for (let round = 0; reach > FINEST && round < MOST_ROUNDS; round++) {
    const { placement, allowances, worth } = state;
    const programme = changes(skin, points, allowances, placement, length, reach);
    const change = stage === 'least' ? programme.best() : programme.bestBySide(sides);
    if (!change) break;
    const promised = change.levels ? gainOf(change.levels, worth) : change.least - worth[0]!;
    if (promised < GAIN) break;
    const next = after(placement, change.by);
    const trial = predicted(skin, allowances, placement, length, points, change.by);
    const margin = GAIN + BEYOND * Math.max(...change.by.map(Math.abs));
    const least = leastOf(skin, points, trial);
    measure(
      next,
      trial,
      points.filter((i) => trial.over[i]! <= least[skin.side[i]!]! + margin),
    );
    const levels = levelsOf(skin, points, trial, sides);
    const gain = stage === 'least' ? levels[0]! - worth[0]! : gainOf(levels, worth);
    if (gain < promised / 4) reach /= 3;
    if (gain > 0) state = { placement: next, allowances: trial, worth: levels };
  }
  return state;
}

/** What allowances become by a small change, in proportion to it. */
function predicted(
  skin: Skin,
  { over, toward }: Allowances,
  placement: Placement,
  length: number,
  points: Uint32Array,
  by: Change,
): Allowances {
  const next = { over: over.slice(), toward: toward.slice() };
  for (const i of points) {
    const [dx, dz] = movedBy(skin, i, placement, length, by);
    next.over[i] = over[i]! - toward[3 * i]! * dx - toward[3 * i + 2]! * dz;
  }
  return next;
}

function after({ along, up, noseUp }: Placement, by: Change): Placement {
  return { along: along + by[0]!, up: up + by[1]!, noseUp: noseUp + by[2]! };
}

/** The least allowance of each of `SIDES`. */
export function leastOf(skin: Skin, points: Uint32Array, { over }: Allowances): Float64Array {
  const least = new Float64Array(SIDES.length).fill(Infinity);
  for (const i of points) if (over[i]! < least[skin.side[i]!]!) least[skin.side[i]!] = over[i]!;
  return least;
}

function levelsOf(skin: Skin, points: Uint32Array, of: Allowances, sides: readonly number[]): number[] {
  const least = leastOf(skin, points, of);
  return sides.map((side) => least[side]!).sort((a, b) => a - b);
}

/** By how much the first level that differs is larger. */
function gainOf(levels: readonly number[], than: readonly number[]): number {
  for (const [i, level] of levels.entries()) if (Math.abs(level - than[i]!) > GAIN) return level - than[i]!;
  return 0;
}
