import type { Placement } from './placement.js';
import type { StripFit } from './stripFits.js';

/** How the board lies in one strip. */
export function placementOf(fits: readonly StripFit[], member: string): Placement {
  return (fits.find(({ of }) => of.includes(member)) ?? fits[0]!).placement;
}
