import type { Placement } from './placement.js';
import type { InBlank } from './inBlank.js';

/** How the board lies in one strip. */
export function placementOf({ fits }: InBlank, member: string): Placement {
  return (fits.find(({ of }) => of.includes(member)) ?? fits[0]!).placement;
}
