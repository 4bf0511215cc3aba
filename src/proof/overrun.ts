import type { Patch } from '../board/mesh.js';
import type { Chamber } from '../chamber/chamber.js';
import { goesThrough } from '../chamber/through.js';
import type { Row } from '../layup/layup.js';
import type { PatchTrees } from '../wall/patchTree.js';
import { thinWalls } from './thinWalls.js';

/** How much too deep the router may go in one chamber before something gives. */
export interface Overrun {
  readonly chamber: string;
  /** mm; `MOST` when it is that much or more. */
  readonly by: number;
  /** What gives first: a wall, or the floor before a solid member. */
  readonly gives: Patch | 'floor' | 'nothing';
}

/** No router is set wrong by more than this, mm. */
const MOST = 25;
/** How near it is found, mm. */
const NEAR = 0.05;

/**
 * For each chamber, how much deeper than planned it may come out with every wall still what the builder asked for, the
 * routing tolerance not counted on top: that is what the tolerance is for. Sorted, the first to give first. What is
 * routed right through has no depth to miss.
 *
 * @param stated the walls asked without the tolerance, mm
 * @param floor what is left before a solid member, mm
 */
export function overruns(
  chambers: readonly Chamber[],
  rows: readonly Row[],
  trees: PatchTrees,
  chordError: number,
  stated: Readonly<Record<Patch, number>>,
  floor: number,
): Overrun[] {
  const byId = new Map(rows.map((row) => [row.id, row]));
  return chambers
    .map((chamber): Overrun => {
      const row = byId.get(chamber.row)!;
      const give = (by: number): Overrun['gives'] => {
        if (row.end !== 'rail' && by >= floor) return 'floor';
        const deeper: Chamber = { ...chamber, depth: [chamber.depth[0], chamber.depth[1] + by] };
        return thinWalls([deeper], [row], trees, chordError, stated)[0]?.patch ?? 'nothing';
      };
      if (goesThrough(chamber, row) || give(MOST) === 'nothing')
        return { chamber: chamber.id, by: MOST, gives: 'nothing' };
      let [low, high] = [0, MOST];
      while (high - low > NEAR) {
        const middle = (low + high) / 2;
        if (give(middle) === 'nothing') low = middle;
        else high = middle;
      }
      return { chamber: chamber.id, by: low, gives: give(high) };
    })
    .sort((a, b) => a.by - b.by);
}
