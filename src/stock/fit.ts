import type { Board } from '../board/board.js';
import type { Layup } from '../layup/layup.js';
import { measuring, noAllowances } from './allowances.js';
import { bestPlacement } from './bestPlacement.js';
import { boundOf, WITHIN } from './bound.js';
import { depthsOf } from './nearest.js';
import { outOfReach } from './outOfReach.js';
import { groupsOf } from './groups.js';
import type { Placement } from './placement.js';
import type { SawnStrip } from './sawn.js';
import { skinOf, type Skin } from './skin.js';
import type { Slid } from './slid.js';
import { smallestSlide, type Slide } from './smallestSlide.js';

/** How a finished board lies in the strips sawn from a moulded blank, and what stock stands over it. */
export interface Fit {
  readonly placement: Placement;
  readonly skin: Skin;
  /** Over each point of the skin, mm; negative where the stock falls short. */
  readonly over: Float64Array;
  /**
   * No placement that moves the board along, up or at either end by less than `within` mm leaves more, mm; both for the
   * meshes of board and blank. Absent where the builder has placed it.
   */
  readonly bound?: { readonly most: number; readonly within: number };
  /** Points of the skin that no placement saves; they count after all others. None where the builder has placed it. */
  readonly outOfReach: Uint32Array;
}

/** What is placed in what, ready to be measured. */
export interface Fitting {
  readonly skin: Skin;
  /** The placement with the largest least allowance over these points of the skin that the blank can reach. */
  best(points: Uint32Array): Fit;
  /** A placement that the builder chose. */
  measured(placement: Placement, points: Uint32Array): Fit;
  /**
   * The smallest further slide of a strip by which what is asked stands over these points of it, in whole steps, mm.
   */
  slide(points: Uint32Array, others: Placement, now: Slid, step: number): Slide | undefined;
}

/**
 * @param blank the moulded blank, in its own frame like a board's
 * @param strips where the strips of the glue-up lie in it
 * @param asked what is to stand over the board, mm
 * @param halves which halves of the board are looked at: the right one where left and right are alike
 */
export function fittingOf(
  board: Board,
  layup: Layup,
  blank: Board,
  strips: readonly SawnStrip[],
  asked: number,
  halves: readonly (0 | 1)[],
): Fitting {
  const skin = skinOf(board, layup, strips, halves);
  const { length } = board;
  const measure = measuring(skin, strips, length, depthsOf(blank));
  return {
    skin,
    measured(placement, points) {
      const allowances = noAllowances(skin);
      measure(placement, allowances, points);
      return { placement, skin, over: allowances.over, outOfReach: new Uint32Array() };
    },
    slide: (points, others, now, step) => smallestSlide(skin, measure, length, points, others, now, asked, step),
    best(points) {
      const placing = { skin, measure, length, asked };
      const whole = groupsOf(skin, []);
      const starts = startsIn(board, blank);
      const first = bestPlacement({ ...placing, group: whole }, points, starts);
      const lost = outOfReach(skin, strips, blank, length, first.allowances.over, points, asked);
      const group = lost.length > 0 ? groupsOf(skin, lost) : whole;
      const found =
        lost.length > 0 ? bestPlacement({ ...placing, group }, points, [first.placement, ...starts]) : first;
      const most = boundOf(skin, group, strips, blank, found.allowances, found.placement, length, points);
      const { over } = found.allowances;
      return { placement: found.placement, skin, over, bound: { most, within: WITHIN }, outOfReach: lost };
    },
  };
}

/** Shares of what the blank is longer, at which the board is first laid in it. */
const FIRST_SHARES = [0.15, 0.5, 0.85];

/** Middle over middle upward, and from the one end to the other. */
function startsIn(board: Board, blank: Board): Placement[] {
  const middle = ({ surface, length }: Board) => surface.bottom(length / 2) + surface.thickness(length / 2) / 2;
  const up = middle(blank) - middle(board);
  return FIRST_SHARES.map((share) => ({ along: share * (blank.length - board.length), up, noseUp: 0 }));
}
