import type { BoardSpec } from '../../src/job/spec/board.js';

/** A blank about a board: so much longer, thicker, and wider on each side, its rocker so many times the board's. */
export function largerBlank(
  spec: BoardSpec,
  by: { readonly longer: number; readonly thicker: number; readonly wider: number; readonly rocker?: number },
): BoardSpec {
  const stretch = (spec.length + by.longer) / spec.length;
  return {
    length: spec.length + by.longer,
    right: {
      nose:
        spec.right.nose.kind === 'square' ? { kind: 'square', half: spec.right.nose.half + by.wider } : spec.right.nose,
      tail: widened(spec.right.tail, by.wider),
      points: spec.right.points.map(({ x, half }) => ({ x: x * stretch, half: half + by.wider })),
    },
    profile: spec.profile.map(({ x, bottom, thickness }) => ({
      x: x * stretch,
      bottom: bottom * (by.rocker ?? 1),
      thickness: thickness + by.thicker,
    })),
    sections: spec.sections.map((section) => ({ ...section, x: section.x * stretch })),
  };
}

function widened(tail: BoardSpec['right']['tail'], by: number): BoardSpec['right']['tail'] {
  return tail.kind === 'swallow'
    ? { kind: 'square', half: tail.half + by }
    : 'half' in tail
      ? { ...tail, half: tail.half + by }
      : tail;
}
