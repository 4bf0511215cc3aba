import type { Placement } from './placement.js';
import type { InBlank } from './inBlank.js';

/** How the board lies in one strip: of a pair that is alike only the right one was looked at. */
export function placementOf({ fits, isAlike }: InBlank, member: string): Placement {
  const looked = isAlike ? member.replace('ML', 'MR') : member;
  return (fits.find(({ of }) => of.includes(looked)) ?? fits[0]!).placement;
}
