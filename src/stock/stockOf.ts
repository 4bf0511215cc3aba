import type { Board } from '../board/board.js';
import type { PlankSpec, RawStockSpec } from '../job/spec/stock.js';
import { WRITTEN_STEP } from '../length/rounded.js';
import type { Units } from '../length/units.js';
import type { Layup } from '../layup/layup.js';
import type { Moments } from '../weigh/moments.js';
import { inBlank, type InBlank } from './inBlank.js';
import { lumberList, type LumberList } from './lumber/lumberList.js';
import { milledVolume } from './lumber/milledVolume.js';
import { profilesOf, type Profile } from './lumber/profile.js';

/** From the raw stock to the glued blank: how the board lies in it, what is milled, what to buy, where it is short. */
export interface Stock {
  /** Absent where there is no moulded blank. */
  readonly blank?: InBlank;
  /** Stringers; strips too where they come from billets. Left to right. */
  readonly profiles: readonly Profile[];
  /** Absent where the job lists none. */
  readonly lumber?: LumberList;
  readonly billets?: LumberList;
  /** What each member holds as it is glued up, litres, as in `Layup.members`; undefined without stock listed for it. */
  readonly glued: readonly (Moments | undefined)[];
  /** Materials that are listed as stock, and that no member is of. */
  readonly unused: { readonly lumber: readonly string[]; readonly billets: readonly string[] };
}

/**
 * A pure function of the drawn board, its glue-up and what stock there is.
 *
 * @param units what lengths are told in
 */
export function stockOf(spec: RawStockSpec, board: Board, layup: Layup, isOneSided: boolean, units: Units): Stock {
  const fromBillets = spec.billets.length > 0;
  const profiles = profilesOf(board, layup, spec.milling, ({ kind }) => kind === 'stringer' || fromBillets);
  const blank = spec.blank && inBlank(spec.blank, spec.allowance, board, layup, isOneSided, WRITTEN_STEP[units]);
  const of = (kind: 'strip' | 'stringer') => profiles.filter(({ member }) => member.kind === kind);
  const unused = (planks: readonly PlankSpec[], kind: 'strip' | 'stringer') =>
    [...new Set(planks.map(({ material }) => material.name))].filter((name) =>
      layup.members.every((member) => member.kind !== kind || member.material.name !== name),
    );
  return {
    ...(blank && { blank }),
    profiles,
    glued: layup.members.map((member) => {
      const strip = blank?.strips.findIndex((each) => each.member === member) ?? -1;
      if (strip >= 0) return blank!.volumes[strip];
      const profile = profiles.find((each) => each.member === member);
      const isListed = member.kind === 'strip' ? fromBillets : spec.lumber.length > 0;
      return profile && isListed ? milledVolume(profile) : undefined;
    }),
    unused: { lumber: unused(spec.lumber, 'stringer'), billets: unused(spec.billets, 'strip') },
    ...(spec.lumber.length > 0 && { lumber: lumberList(of('stringer'), spec.lumber, spec.milling) }),
    ...(fromBillets && { billets: lumberList(of('strip'), spec.billets, { ...spec.milling, planing: 0 }) }),
  };
}
