import { changes, movedBy, type BestByGroup, type BestChange, type Change } from './changes.js';
import { noAllowances, type Allowances, type Measure } from './allowances.js';
import { leastOf, levelsOf, OUT_OF_REACH, type Groups } from './groups.js';
import type { Placement } from './placement.js';
import type { Skin } from './skin.js';

/** What is placed, and by what it is judged. */
export interface Placing {
  readonly skin: Skin;
  readonly group: Groups;
  readonly measure: Measure;
  /** Of the board, mm. */
  readonly length: number;
  /** What is to stand over the board, mm. */
  readonly asked: number;
}

/**
 * The placement with the largest least allowance. Where one side holds that down whatever is done about it (a rail at
 * the widest point), the others are made as large as they can be after it, one side after the other; see `levelsOf`.
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
  placing: Placing,
  points: Uint32Array,
  starts: readonly Placement[],
): { readonly placement: Placement; readonly allowances: Allowances } {
  const few = points.filter((_, i) => i % ROUGHLY === 0);
  const rough = starts.map((start) => improved('least', measured(placing, start, few), placing, few, FAR));
  const best = rough.reduce((a, b) => (b.levels[0]! > a.levels[0]! ? b : a));
  const near = measured(placing, improved('levels', best, placing, few, FAR).placement, points);
  let found = improved('least', near, placing, points, NEAR);
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const { placement, best } = improved('levels', found, placing, points, NEAR);
    if (round > 0 && placement === found.placement) break;
    found = { ...measured(placing, placement, points), best };
  }
  return found;
}

/** One point in so many is enough to find where about the placement is. */
const ROUGHLY = 16;

interface State {
  readonly placement: Placement;
  readonly allowances: Allowances;
  /** As in `levelsOf`. */
  readonly levels: readonly number[];
  /** What the levels have been at best on the way. */
  readonly best: readonly number[];
}

/** How far the first changes may go, mm: with few points, and with all; and what is finer than a mark. */
const FAR = 60;
const NEAR = 3;
const FINEST = 0.02;
const MOST_ROUNDS = 16;
/** A gain of less is none, mm. */
const GAIN = 0.005;
/** What a change may do beyond its proportion, as a share of it: points so much nearer are measured. */
const BEYOND = 0.1;
/** By how much a change of 1 mm may bring one point nearer than another, mm: both ends go along and up. */
const APART = 5;

function measured({ skin, group, measure, asked }: Placing, placement: Placement, points: Uint32Array): State {
  const allowances = noAllowances(skin);
  measure(placement, allowances, points);
  const levels = levelsOf(leastOf(group, points, allowances), asked);
  return { placement, allowances, levels, best: levels };
}

function improved(stage: 'least' | 'levels', from: State, placing: Placing, all: Uint32Array, first: number): State {
  const { skin, group, measure, length, asked } = placing;
  let state = from;
  let reach = first;
  for (let round = 0; reach > FINEST && round < MOST_ROUNDS; round++) {
    const { placement, allowances, levels, best } = state;
    const before = leastOf(group, all, allowances);
    const points = all.filter((i) => allowances.over[i]! <= before[group[i]!]! + APART * reach);
    const programme = changes(skin, group, points, allowances, placement, length, reach);
    const change =
      stage === 'least'
        ? onlyLeast(programme.best(), before, asked)
        : programme.bestByGroup(presentIn(before), asked, best);
    if (!change) break;
    const promised = gainOf(change.levels, levels, change.held);
    if (promised < GAIN) break;
    const next = after(placement, change.by);
    const trial = predicted(skin, allowances, placement, length, all, change.by);
    const margin = GAIN + BEYOND * Math.max(...change.by.map(Math.abs));
    const least = leastOf(group, all, trial);
    measure(
      next,
      trial,
      all.filter((i) => trial.over[i]! <= least[group[i]!]! + margin),
    );
    const reached = levelsOf(leastOf(group, all, trial), asked);
    const gain = gainOf(reached, levels, change.held);
    if (gain < promised / 4) reach /= 3;
    if (gain > 0) state = { placement: next, allowances: trial, levels: reached, best: bestOf(reached, best) };
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

const presentIn = (least: Float64Array) => [...least.keys()].filter((of) => least[of]! < Infinity);

/** A change that makes the least allowance largest, as the first level of all. */
function onlyLeast(change: BestChange | undefined, least: Float64Array, asked: number): BestByGroup | undefined {
  if (!change) return undefined;
  const level = least[OUT_OF_REACH]! < Infinity ? Math.min(asked, change.least) : change.least;
  return { by: change.by, levels: [level], held: [level] };
}

/** The larger of each level; those after one that is larger than it ever was begin anew. */
function bestOf(levels: readonly number[], before: readonly number[]): number[] {
  const better = levels.findIndex((level, i) => level > before[i]! + GAIN);
  return levels.map((level, i) => (better < 0 || i < better ? Math.max(level, before[i]!) : level));
}

/** By how much the first level that differs is larger, where a level counts no more than it is to be held to. */
function gainOf(levels: readonly number[], than: readonly number[], held: readonly number[]): number {
  for (const [i, most] of held.entries()) {
    const gain = Math.min(levels[i]!, most) - Math.min(than[i]!, most);
    if (Math.abs(gain) > GAIN) return gain;
  }
  return 0;
}
