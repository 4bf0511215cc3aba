import { solved } from './linearProgramme.js';
import type { Allowances } from './allowances.js';
import { OUT_OF_REACH, type Groups } from './groups.js';
import type { Placement } from './placement.js';
import type { Skin } from './skin.js';

/** A small change of a placement: along, up, nose up, mm. */
export type Change = Float64Array;

export interface BestChange {
  readonly by: Change;
  /** The least allowance that it promises, mm. */
  readonly least: number;
}

/** The best change group by group: what each level of `levelsOf` is promised to be, and what of it is held, mm. */
export interface BestByGroup {
  readonly by: Change;
  readonly levels: readonly number[];
  readonly held: readonly number[];
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
/**
 * What a level that is held may lose so that the next is larger, mm: less than any rule shows. A side is held down by
 * the others where they leave it no more than `STUCK`, mm.
 */
const HOLD = 0.03;
const STUCK = 0.1;
/** Limits taken up at a time, the most overstepped of every group. */
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

/**
 * The linear programmes of changes that move the board along, up and at either end by at most `reach` mm.
 *
 * @param group the group of each point of the skin
 */
export function changes(
  skin: Skin,
  group: Groups,
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

  /** `floor` of a group: what its allowances may not go below; undefined where the least is to be made largest. */
  const largest = (floor: (group: number) => number | undefined): BestChange | undefined => {
    while (true) {
      const programme = new Float64Array(VARIABLES * taken.length);
      const limits = new Float64Array(taken.length);
      taken.forEach((k, row) => {
        const i = points[k]!;
        const held = floor(group[i]!);
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
        return value(k, by) + (floor(group[i]!) ?? least) - over[i]!;
      });
      if (overstepped.length === 0) return { by, least };
      taken.push(...overstepped);
    }
  };
  /** The points that overstep most, some of every group; those in the programme overstep by rounding alone. */
  const worst = (beyond: (k: number) => number): number[] => {
    const most = new Map<number, { k: number; by: number }[]>();
    for (let k = 0; k < count; k++) {
      const by = beyond(k);
      if (by <= 10 * HELD) continue;
      const of = group[points[k]!]!;
      const list = most.get(of) ?? [];
      if (list.length < AT_A_TIME || by > list.at(-1)!.by) {
        list.push({ k, by });
        list.sort((a, b) => b.by - a.by);
        list.length = Math.min(list.length, AT_A_TIME);
        most.set(of, list);
      }
    }
    return [...most.values()].flatMap((list) => list.map(({ k }) => k)).filter((k) => !taken.includes(k));
  };

  return {
    /** The change with the largest least allowance; what is out of reach is not counted. */
    best: () => largest((of) => (of === OUT_OF_REACH ? -ANY : undefined)),
    /**
     * The largest of each level in turn.
     *
     * @param asked what a level is held to wherever it reaches it, mm
     * @param best what the levels have been at best, so that what is lost of one is not lost again at every change
     */
    bestByGroup(present: readonly number[], asked: number, best: readonly number[]): BestByGroup | undefined {
      const floors = new Map<number, number>();
      const levels: number[] = [];
      const held: number[] = [];
      const hold = (level: number) => {
        const floor = Math.min(level, Math.max(level, best[levels.length]!) - HOLD);
        return level >= asked ? Math.max(asked, floor) : floor;
      };
      let found: BestChange | undefined;
      if (present.includes(OUT_OF_REACH)) {
        const rest = largest((of) => (of === OUT_OF_REACH ? -ANY : undefined));
        if (!rest) return undefined;
        const enough = Math.min(asked, hold(rest.least));
        levels.push(Math.min(asked, rest.least));
        held.push(enough);
        const lost = largest((of) => (of === OUT_OF_REACH ? undefined : enough));
        if (!lost) return undefined;
        const floor = hold(lost.least);
        floors.set(OUT_OF_REACH, floor);
        levels.push(lost.least);
        held.push(floor);
        found = lost;
      }
      const floorOf = (of: number) => floors.get(of);
      let free = present.filter((of) => of !== OUT_OF_REACH);
      while (free.length > 0) {
        const together = largest(floorOf);
        if (!together) break;
        found = together;
        const { least } = together;
        const floor = hold(least);
        const alone = (one: number) =>
          largest((of) => (of === one ? undefined : (floorOf(of) ?? floor)))?.least ?? -ANY;
        const alike = free.length === 1 ? free : free.filter((of) => alone(of) < least + STUCK);
        const stuck = alike.length > 0 ? alike : free;
        for (const of of stuck) {
          floors.set(of, floor);
          levels.push(least);
          held.push(floor);
        }
        free = free.filter((of) => !stuck.includes(of));
      }
      return found && { by: found.by, levels, held };
    },
    /** The points that hold a change down. */
    holding: ({ by, least }: BestChange): number[] =>
      taken
        .filter((k) => group[points[k]!] !== OUT_OF_REACH && value(k, by) + least > over[points[k]!]! - 100 * HELD)
        .map((k) => points[k]!),
  };
}
