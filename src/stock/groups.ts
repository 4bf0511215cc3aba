import type { Allowances } from './allowances.js';
import { SIDES, type Skin } from './skin.js';

/**
 * In which group each point of the skin is: its side, or those that are out of reach of the blank, wherever the board
 * is laid in it.
 */
export type Groups = Uint8Array;
export const OUT_OF_REACH = SIDES.length;

/** @param outOfReach points of the skin */
export function groupsOf({ side }: Skin, outOfReach: Iterable<number>): Groups {
  const group = side.slice();
  for (const i of outOfReach) group[i] = OUT_OF_REACH;
  return group;
}

/** The least allowance of each group, as in `Groups`, mm; `Infinity` for one that has no point. */
export function leastOf(group: Groups, points: Uint32Array, { over }: Allowances): Float64Array {
  const least = new Float64Array(OUT_OF_REACH + 1).fill(Infinity);
  for (const i of points) if (over[i]! < least[group[i]!]!) least[group[i]!] = over[i]!;
  return least;
}

/**
 * What a placement is worth, the first the most, mm: the least of each side, the smallest first. Where some of the
 * board is out of reach, first what is asked, if the rest has it, and how far that lies outside: for its sake the rest
 * gives up nothing that is asked.
 */
export function levelsOf(least: Float64Array, asked: number): number[] {
  const sides = [...least.subarray(0, OUT_OF_REACH)].filter(Number.isFinite).sort((a, b) => a - b);
  const lost = least[OUT_OF_REACH]!;
  return lost === Infinity || sides.length === 0
    ? [...sides, lost].filter(Number.isFinite)
    : [Math.min(asked, sides[0]!), lost, ...sides];
}
