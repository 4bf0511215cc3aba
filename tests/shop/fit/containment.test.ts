import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fitsInside } from '../../../src/shop/fit/containment.js';
import type { Outline } from '../../../src/shop/log/trackedBlock.js';

const rectangle = (length: number, height: number, s = 0, z = 0): Outline => [
  [s, z],
  [s + length, z],
  [s + length, z + height],
  [s, z + height],
];

describe('whether one block can be cut out of another', () => {
  // Two boxes the same way round: the one fits into the other exactly when neither side is longer (plain arithmetic).
  it('boxes compare by their sides, wherever they lie and whichever way their outline runs', () => {
    const side = fc.integer({ min: 20, max: 400 });
    fc.assert(
      fc.property(
        side,
        side,
        side,
        side,
        fc.integer({ min: -900, max: 900 }),
        fc.boolean(),
        (a, b, c, d, shift, back) => {
          const small = rectangle(a, b, shift, -shift / 2);
          expect(fitsInside(back ? [...small].reverse() : small, rectangle(c, d), 0.1)).toBe(a <= c && b <= d);
        },
      ),
      { seed: 7, numRuns: 300 },
    );
  });

  it('a taper is not held by a box of its mean height, but by one of its full height', () => {
    const taper: Outline = [
      [0, 0],
      [200, 0],
      [200, 60],
      [0, 80],
    ];
    expect(fitsInside(taper, rectangle(200, 70), 0.5)).toBe(false);
    expect(fitsInside(taper, rectangle(200, 80), 0.5)).toBe(true);
  });

  it('a taper turned the other way does not fit, though every size agrees', () => {
    expect(
      fitsInside(
        [
          [0, 0],
          [200, 0],
          [200, 80],
          [0, 60],
        ],
        [
          [0, 0],
          [200, 0],
          [200, 60],
          [0, 80],
        ],
        0.5,
      ),
    ).toBe(false);
  });

  it('a shorter taper slides toward the high end until it fits', () => {
    // 100 long, 70 to 75 high: held by 200 long, 60 to 80 high from its middle on (z = 60 + s/10: 70 at 100, 80 at
    // 200).
    const held: Outline = [
      [0, 0],
      [100, 0],
      [100, 80],
      [0, 70],
    ];
    const wedge: Outline = [
      [0, 0],
      [200, 0],
      [200, 80],
      [0, 60],
    ];
    expect(fitsInside(held, wedge, 0.05)).toBe(true);
    expect(
      fitsInside(
        [
          [0, 0],
          [103, 0],
          [103, 80],
          [0, 70],
        ],
        wedge,
        0.05,
      ),
    ).toBe(false);
  });

  it('a hollow edge counts: a straight block does not fit where the old one bends away', () => {
    const hollow: Outline = [
      [0, 0],
      [300, 0],
      [300, 60],
      [150, 54],
      [0, 60],
    ];
    expect(fitsInside(rectangle(300, 60), hollow, 0.5)).toBe(false);
    expect(fitsInside(rectangle(300, 54), hollow, 0.5)).toBe(true);
    expect(fitsInside(hollow, rectangle(300, 60), 0.5)).toBe(true);
  });

  it('a block that is larger all round is not taken for one that is smaller', () => {
    expect(fitsInside(rectangle(500, 300), rectangle(100, 50), 0.5)).toBe(false);
  });

  it('one square corner does not hide in the rounding of a long outline', () => {
    // The corner cut off at 45° takes 2.5 mm² of 400 × 100 mm: it stands out by 1.6 mm, square to the cut.
    const cut: Outline = [
      [0, 0],
      [400, 0],
      [400, 100],
      [2.3, 100],
      [0, 97.7],
    ];
    expect(fitsInside(rectangle(400, 100), cut, 0.05)).toBe(false);
  });
});
