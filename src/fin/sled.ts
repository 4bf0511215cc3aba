import type { FinSpec } from '../job/spec/finish.js';
import { blankThickness, sidesOf } from './layers.js';
import { blankSize } from './blank.js';

/**
 * The taper sled: a flat board with two square blocks across it, on which the blank goes through the surface sander.
 * The edge of each block that is nearer to the base lies under the base line and under the tip line. mm.
 */
export interface Sled {
  /** Height of the block under the base line; the same for every side. */
  readonly low: number;
  /** One for each side that is tapered, in the order of the work. */
  readonly sides: readonly SledSide[];
}

export interface SledSide {
  /** Height of the block under the tip line. */
  readonly high: number;
  /** From the top of the sled to the drum at the last pass. */
  readonly opening: number;
  /** What a caliper finds at the base line and at the tip line when it is done. */
  readonly base: number;
  readonly tip: number;
  /** The most that is taken off, at the blank's end beyond the tip, and in how many passes. */
  readonly taken: number;
  readonly passes: number;
}

/** Height of the block under the base line, and how far the blank's end stays clear of the sled. */
const LOW = 10;
const CLEAR = 2;

/**
 * The sled's blocks so that the blank comes out with the thickness asked at base and tip, `leave` on each foiled side
 * included. The blank's faces are parallel; let each side fall by the angle θ, tan θ = slope. Lying on its parallel
 * face the blank must be tilted by θ, on the face that is tapered already by 2 θ. Base line and tip line are `depth`
 * apart on the first and `depth` / cos θ on the second, so that the tip's block is depth · sin θ higher than the
 * other, then twice that.
 */
export function sledOf(fin: FinSpec): Sled {
  const { depth, build } = fin;
  const sides = sidesOf(fin);
  const { base, tip } = taperedTo(fin);
  const slope = (base - tip) / sides / depth;
  const angle = Math.atan(slope);
  const thickness = blankThickness(fin);
  const { below, above } = blankSize(fin);
  const low = Math.max(LOW, Math.ceil(below * Math.sin(sides * angle) + CLEAR));
  const rise = depth * Math.sin(angle);
  return {
    low,
    sides: Array.from({ length: sides }, (_, done): SledSide => {
      // What is not tapered yet stands over the middle by half of the blank.
      const untouched = sides - 1 - done;
      const at = (final: number) => (untouched === 1 ? (thickness + final) / 2 : final);
      const taken = (thickness - (tip - sides * slope * above)) / sides;
      return {
        high: low + (1 + done) * rise,
        opening: low + at(base) * Math.cos(angle),
        base: at(base),
        tip: at(tip),
        taken,
        passes: Math.ceil(taken / build!.pass - 1e-9),
      };
    }),
  };
}

/** Thickness off the sled at base and tip, mm: what is left for the foil on each foiled side included. */
export function taperedTo(fin: FinSpec): { readonly base: number; readonly tip: number } {
  const left = fin.build!.leave * sidesOf(fin);
  return { base: fin.thickness + left, tip: fin.tipThickness + left };
}
