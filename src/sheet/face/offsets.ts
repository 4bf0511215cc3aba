import type { Point } from '../../contour/point.js';
import type { Chamber } from '../../chamber/chamber.js';
import { heightAt } from '../../chamber/edges.js';
import type { FaceLine } from '../../view/faceLine.js';
import { chamberEnds } from './chamberEnds.js';

/** A straightedge or a batten between marks lies no further than this from the line as drawn, mm. */
export const JOINED_WITHIN = 0.3;

/** A place on a long line of a chamber: `s` along the face, and how far under the deck or over the bottom it is, mm. */
export interface Offset {
  readonly s: number;
  readonly height: number;
}

/** A long line of a chamber by heights that a square and a tape can mark. */
export interface MarkedLine {
  readonly nose: Offset;
  readonly tail: Offset;
  /**
   * What it goes through between: nothing where a straightedge does, its middle where a batten does, else every bend,
   * straight from one to the next.
   */
  readonly between: readonly Offset[];
}

/** Both long lines of a chamber by heights under deck and over bottom, its corners as they were before easing. */
export function offsetsOf({ contour }: Chamber, finished: FaceLine): { upper: MarkedLine; lower: MarkedLine } {
  const { upper, lower } = chamberEnds(contour);
  const marked = (line: readonly Point[], height: (z: number, s: number) => number): MarkedLine => {
    const at = ([s, z]: Point): Offset => ({ s, height: height(z, s) });
    return { nose: at(line[0]!), tail: at(line.at(-1)!), between: betweenEnds(line).map(at) };
  };
  return {
    upper: marked(upper, (z, s) => finished.heightsAt(s)!.deck - z),
    lower: marked(lower, (z, s) => z - finished.heightsAt(s)!.bottom),
  };
}

function betweenEnds(line: readonly Point[]): Point[] {
  const [[s0, z0], [s1, z1]] = [line[0]!, line.at(-1)!];
  const off = ([s, z]: Point, sag: number): number => {
    const share = (s - s0) / (s1 - s0);
    return Math.abs(z - z0 - share * (z1 - z0) - sag * bow(share));
  };
  if (line.every((point) => off(point, 0) <= JOINED_WITHIN)) return [];
  const middle = (s0 + s1) / 2;
  const z = heightAt(line, middle);
  const sag = z - (z0 + z1) / 2;
  const tried = Array.from({ length: SAMPLES }, (_, i): Point => {
    const s = s0 + ((i + 1) / (SAMPLES + 1)) * (s1 - s0);
    return [s, heightAt(line, s)];
  });
  const follows = [...line, ...tried].every((point) => off(point, sag) <= JOINED_WITHIN);
  return follows ? [[middle, z]] : line.slice(1, -1);
}

/** Places along a line at which a batten is held against it. */
const SAMPLES = 32;

/**
 * How far a batten that is pushed off its chord in the middle stands off it at a share of its length, as a share of the
 * middle's: a beam on two supports with a load in the middle, `y = P x (3 L² − 4 x²) / 48 E I` up to there (a standard
 * case of beam tables).
 */
function bow(share: number): number {
  const u = Math.min(share, 1 - share);
  return u * (3 - 4 * u * u);
}
