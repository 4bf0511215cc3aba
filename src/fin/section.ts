import type { FinSpec } from '../job/spec/finish.js';
import { MM_PER_INCH, type Units } from '../length/units.js';
import { halfThickness, THICKEST } from './foil.js';
import { layersOf, sidesOf, thicknessAt } from './layers.js';
import { chordAt, type FinOutline } from './outline.js';

/** The finished foil at a height over the base, mm. */
export interface FinSection {
  readonly y: number;
  /** Where its chord begins, fin frame, and how long it is. */
  readonly from: number;
  readonly length: number;
  readonly thickness: number;
  /**
   * Where the line between two layers comes to the surface, from the leading edge: ahead and behind. From the panel
   * outward; layers that do not reach the surface here are left out.
   */
  readonly lines: readonly { readonly under: string; readonly ahead: number; readonly behind: number }[];
}

/** Sections of a foil stand so far apart at most, mm, and so many there are at least. Common practice, no source. */
const APART = 50;
const FEWEST = 4;
/** They stand at whole steps of a rule over the base, mm: they are marked on the blank. */
const STEP = { mm: 5, in: MM_PER_INCH / 4 } as const;
/** The last section stands below the tip by this share of the depth: at the tip itself a round one has no chord. */
const LAST = 0.94;

/** From the base up. */
export function sectionHeights({ depth }: Pick<FinSpec, 'depth'>, units: Units): number[] {
  const step = STEP[units];
  const apart = step * Math.max(1, Math.floor(Math.min(APART, (LAST * depth) / FEWEST) / step));
  return Array.from({ length: Math.floor((LAST * depth) / apart) + 1 }, (_, i) => i * apart);
}

export function sectionAt(fin: FinSpec, outline: FinOutline, y: number): FinSection {
  const { from, length } = chordAt(outline, y);
  const thickness = thicknessAt(fin, y);
  const reach = thickness * (2 / sidesOf(fin));
  const lines = layersOf(fin).flatMap(({ name, to }) => {
    const at = surfacesAt(to / reach);
    return at ? [{ under: name, ahead: at[0] * length, behind: at[1] * length }] : [];
  });
  return { y, from, length, thickness, lines };
}

/** Where the foil is as high over its middle as a share of its thickness: ahead of and behind the thickest place. */
function surfacesAt(share: number): [ahead: number, behind: number] | undefined {
  if (share >= halfThickness(THICKEST) || share <= halfThickness(1)) return undefined;
  const between = (inner: number, outer: number): number => {
    let [high, low] = [inner, outer];
    for (let i = 0; i < 60; i++) {
      const middle = (high + low) / 2;
      if (halfThickness(middle) > share) high = middle;
      else low = middle;
    }
    return (high + low) / 2;
  };
  return [between(THICKEST, 0), between(THICKEST, 1)];
}
