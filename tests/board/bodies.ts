import type { MeasuredSection } from '../../src/job/spec/board.js';
import type { SectionStation } from '../../src/job/spec/board.js';
import type { ProfileStation } from '../../src/job/spec/board.js';
import type { OutlineSpec } from '../../src/job/spec/board.js';
import type { BoardSpec } from '../../src/job/spec/board.js';

/** Boards with closed forms: their tables of offsets are taken from formulas. Lengths in mm. */

/** Places from 0 to 1, closer together at both ends, so that tables of few rows follow round ends. */
export const cosineShares = (count: number): number[] =>
  Array.from({ length: count + 1 }, (_, i) => (1 - Math.cos((Math.PI * i) / count)) / 2);

/** An outline through the points of a formula; `half` takes the share of the length. */
export function outlineBy(
  length: number,
  half: (share: number) => number,
  nose: OutlineSpec['nose'],
  tail: OutlineSpec['tail'],
  count = 40,
): OutlineSpec {
  const points = cosineShares(count)
    .slice(1, -1)
    .map((share) => ({ x: share * length, half: half(share) }));
  return { nose, tail, points };
}

/** One section for the whole board, from the keel to the deck's middle. */
export function everywhere(points: MeasuredSection['points'], length: number): SectionStation[] {
  return [{ x: length / 2, kind: 'points', points }];
}

export function boardBy(
  length: number,
  outline: OutlineSpec,
  profile: readonly ProfileStation[],
  sections: readonly SectionStation[],
): BoardSpec {
  return { length, right: outline, profile, sections };
}
