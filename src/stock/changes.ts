import { solved } from './linearProgramme.js';
import type { Allowances } from './allowances.js';
import type { Placement } from './placement.js';
import type { Skin } from './skin.js';

/** A small change of a placement: along, up, nose up, mm. */
export type Change = Float64Array;

export interface BestChange {
  readonly by: Change;
  /** The least allowance that it promises, mm. */
  readonly least: number;
  /** The least of each side that it promises, the smallest first; where it was asked for side by side. */
  readonly levels?: readonly number[];
}

/** How far a small change moves a point of the board along and up, in proportion to it, mm. */
export function movedBy(
  { at }: Skin,
  i: number,
  { noseUp }: Placement,
  length: number,
  by: Change,
): [along: number, up: number] {
  const [x, z] = [at[3 * i]! - length / 2, at[3 * i + 2]!];
  const slope = noseUp / length;
  const turn = by[2]! / length;
  return [by[0]! + turn * (z - slope * x), by[1]! - turn * (x + slope * z)];
}

/** Along, up, nose up, and the least allowance. */
const VARIABLES = 4;
/** Larger than any allowance, mm. */
const ANY = 1e5;
/** What rounding may take of a limit, mm. */
const HELD = 1e-6;
/** A side is held down by the others where they leave it no more than this, mm. */
const STUCK = 0.005;
/** Limits taken up at a time, the most overstepped of every side. */
const AT_A_TIME = 3;

/**
 * By how much the allowance over each point falls for every mm along, up and nose up, in proportion; three numbers a
 * point.
 */
export function ratesOf(
  { at }: Skin,
  points: Uint32Array,
  { toward }: Pick<Allowances, 'toward'>,
  { noseUp }: Placement,
  length: number,
): Float64Array {
  const rates = new Float64Array(3 * points.length);
  const slope = noseUp / length;
  points.forEach((i, k) => {
    const [tx, tz] = [toward[3 * i]!, toward[3 * i + 2]!];
    const [x, z] = [at[3 * i]! - length / 2, at[3 * i + 2]!];
    rates[3 * k] = tx;
    rates[3 * k + 1] = tz;
    rates[3 * k + 2] = (tx * (z - slope * x) - tz * (x + slope * z)) / length;
  });
  return rates;
}

/** The linear programmes of changes that move the board along, up and at either end by at most `reach` mm. */
export function changes(
  skin: Skin,
  points: Uint32Array,
  { over, toward }: Allowances,
  placement: Placement,
  length: number,
  reach: number,
) {
  const count = points.length;
  const rows = ratesOf(skin, points, { toward }, placement, length);
  const value = (k: number, by: Change) =>
    rows[3 * k]! * by[0]! + rows[3 * k + 1]! * by[1]! + rows[3 * k + 2]! * by[2]!;
  /** Points whose limits are in the programme: those that once were overstepped stay. */
  const taken: number[] = [];

  /** `floor` of a side: what its allowances may not go below; undefined where the least is to be made largest. */
  const largest = (floor: (side: number) => number | undefined): BestChange | undefined => {
    while (true) {
      const programme = new Float64Array(VARIABLES * taken.length);
      const limits = new Float64Array(taken.length);
      taken.forEach((k, row) => {
        const i = points[k]!;
        const held = floor(skin.side[i]!);
        programme.set(rows.subarray(3 * k, 3 * k + 3), VARIABLES * row);
        programme[VARIABLES * row + 3] = held === undefined ? 1 : 0;
        limits[row] = held === undefined ? over[i]! : over[i]! - held + HELD;
      });
      const bounds = [reach, reach, 2 * reach, ANY];
      const x = solved({ objective: [0, 0, 0, 1], rows: programme, limits, bounds });
      if (!x) return undefined;
      const by = x.subarray(0, 3);
      const least = x[3]!;
      const overstepped = worst((k) => {
        const i = points[k]!;
        return value(k, by) + (floor(skin.side[i]!) ?? least) - over[i]!;
      });
      if (overstepped.length === 0) return { by, least };
      taken.push(...overstepped);
    }
  };
  /** The points that overstep most, some of every side; those in the programme overstep by rounding alone. */
  const worst = (beyond: (k: number) => number): number[] => {
    const most = new Map<number, { k: number; by: number }[]>();
    for (let k = 0; k < count; k++) {
      const by = beyond(k);
      if (by <= 10 * HELD) continue;
      const side = skin.side[points[k]!]!;
      const list = most.get(side) ?? [];
      if (list.length < AT_A_TIME || by > list.at(-1)!.by) {
        list.push({ k, by });
        list.sort((a, b) => b.by - a.by);
        list.length = Math.min(list.length, AT_A_TIME);
        most.set(side, list);
      }
    }
    return [...most.values()].flatMap((list) => list.map(({ k }) => k)).filter((k) => !taken.includes(k));
  };

  return {
    /** The change with the largest least allowance. */
    best: () => largest(() => undefined),
    /** The same, then the largest of each side that the others leave free. */
    bestBySide(sides: readonly number[]): BestChange | undefined {
      const held = new Map<number, number>();
      let found: BestChange | undefined;
      while (held.size < sides.length) {
        const free = sides.filter((side) => !held.has(side));
        const together = largest((side) => held.get(side));
        if (!together) return found;
        found = together;
        const { least } = together;
        const alone = (one: number) => largest((side) => (side === one ? undefined : (held.get(side) ?? least)));
        const stuck = free.length === 1 ? free : free.filter((side) => (alone(side)?.least ?? -ANY) < least + STUCK);
        for (const side of stuck.length > 0 ? stuck : free) held.set(side, least);
      }
      return found && { ...found, levels: [...held.values()].sort((a, b) => a - b) };
    },
    /** The points that hold a change down. */
    holding: ({ by, least }: BestChange): number[] =>
      taken.filter((k) => value(k, by) + least > over[points[k]!]! - 100 * HELD).map((k) => points[k]!),
  };
}
