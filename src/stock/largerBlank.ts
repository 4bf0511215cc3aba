import type { BoardSpec, OutlineSpec } from '../job/spec/board.js';

/** By how much a blank of the same shape is larger, mm: all along, on each side, and in all. */
export interface Larger {
  readonly thicker: number;
  readonly wider: number;
  readonly longer: number;
}

/**
 * The same blank, thicker by as much everywhere, wider by as much on each side, its stations drawn out over its length.
 */
export function largerBlank(spec: BoardSpec, { thicker, wider, longer }: Larger): BoardSpec {
  const { length, right } = spec;
  const stretch = (length + longer) / length;
  return {
    ...spec,
    length: length + longer,
    right: widened(right, wider, stretch),
    profile: spec.profile.map(({ x, bottom, thickness }) => ({
      x: x * stretch,
      bottom,
      thickness: thickness + thicker,
    })),
    sections: spec.sections.map((section) => ({ ...section, x: section.x * stretch })),
  };
}

function widened({ nose, tail, points }: OutlineSpec, wider: number, stretch: number): OutlineSpec {
  return {
    nose: nose.kind === 'square' ? { ...nose, half: nose.half + wider } : nose,
    tail: 'half' in tail ? { ...tail, half: tail.half + wider } : tail,
    points: points.map(({ x, half }) => ({ x: x * stretch, half: half + wider })),
  };
}
