import type { FinSpec } from '../job/spec/finish.js';

/** A section of two parabolic arcs fills two thirds of its chord times its thickness (area under a parabola). */
const SECTION_SHARE = 2 / 3;

/**
 * Volume of a fin, litres. Chord and thickness run straight from base to tip, so the section's area is of second degree
 * along the depth and Simpson's rule is exact.
 */
export function finVolume({ base, tip, depth, thickness, tipThickness }: FinSpec): number {
  const middle = ((base + tip) / 2) * ((thickness + tipThickness) / 2);
  return (SECTION_SHARE * depth * (base * thickness + 4 * middle + tip * tipThickness)) / 6 / 1e6;
}
