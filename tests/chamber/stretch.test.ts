import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { partedBy, stretchOf, without, type Stretch } from '../../src/chamber/stretch.js';

const SEED = 20261127;
const stretch = fc
  .tuple(fc.integer({ min: -20, max: 120 }), fc.integer({ min: 0, max: 60 }))
  .map(([from, long]): Stretch => ({ from, to: from + long }));
const has = ({ from, to }: Stretch, s: number) => s > from && s < to;

test('a profile takes the stretch from its first point to its last, wherever it begins', () => {
  expect(stretchOf([[30, 0], [50, 9], [20, 4]])).toEqual({ from: 20, to: 50 }); // prettier-ignore
});

// Brute force: every half millimetre, on which no end lies.
test(`what is left of a stretch is what no other takes, in whole pieces (seed ${SEED})`, () => {
  fc.assert(
    fc.property(fc.array(stretch, { maxLength: 5 }), (blocked) => {
      const whole = { from: 0, to: 100 };
      const left = without(whole, blocked);
      for (let s = -20.5; s < 130; s++)
        expect(left.filter((each) => has(each, s)).length, `${s}`).toBe(
          has(whole, s) && !blocked.some((each) => has(each, s)) ? 1 : 0,
        );
      for (const { from, to } of left) expect(to).toBeGreaterThan(from);
      // Pieces that touch are parted by something that has no length only.
      left.slice(1).forEach(({ from }, i) => expect(from).toBeGreaterThanOrEqual(left[i]!.to));
    }),
    { seed: SEED, numRuns: 500 },
  );
});

describe('stretches that are drawn apart', () => {
  test('leave a web between neighbours, each giving half of what lacks, and nothing at their outer ends', () => {
    const parts = [
      { from: 0, to: 40 },
      { from: 50, to: 100 },
      { from: 130, to: 170 },
    ];
    expect(partedBy(16, parts, 10)).toEqual([
      { from: 0, to: 37 },
      { from: 53, to: 100 },
      { from: 130, to: 170 },
    ]);
    expect(partedBy(10, parts, 10)).toEqual(parts);
  });

  test('do not count what is too short, which parts nothing', () => {
    const parts = [
      { from: 0, to: 40 },
      { from: 45, to: 54 },
      { from: 60, to: 100 },
    ];
    expect(partedBy(30, parts, 10)).toEqual([
      { from: 0, to: 35 },
      { from: 65, to: 100 },
    ]);
    expect(partedBy(0, parts, 9)).toEqual(parts);
  });
});
