import { easeCorners } from '../../src/contour/ease.js';
import { describe, expect, test } from 'vitest';
import { makingOf } from '../../src/block/cut/making.js';
import { sawnFrom } from '../../src/block/sawn.js';

type Pair = readonly [number, number];
const eased = (corners: readonly Pair[], radius = 4) => easeCorners(corners, radius)!.contour;

describe('saw angles of straight-sided blocks', () => {
  test('a top that falls 10 mm on 100 leans by atan 0.1 = 5.71°', () => {
    const { sides, length, height } = sawnFrom([
      { x: 0, y: 0 },
      { x: 100, y: 0 },
      { x: 100, y: 30 },
      { x: 0, y: 40 },
    ]);
    expect([length, height]).toEqual([100, 40]);
    expect(sides!.taper).toEqual({ top: 10, bottom: 0 });
    expect(sides!.topInDegrees).toBeCloseTo(5.7106, 4);
    expect(sides!.bottomInDegrees).toBe(0);
  });

  test('both sides rising toward the tail: the bottom leans in, the top out, by the same 3-4-5 triangle', () => {
    const { sides } = sawnFrom([
      { x: 500, y: 10 },
      { x: 540, y: 40 },
      { x: 540, y: 90 },
      { x: 500, y: 60 },
    ]);
    expect(sides!.taper).toEqual({ top: -30, bottom: 30 });
    expect(sides!.bottomInDegrees).toBeCloseTo(36.8699, 4);
    expect(sides!.topInDegrees).toBeCloseTo(-36.8699, 4);
  });

  test('eased corners do not change the angles', () => {
    const { sides } = sawnFrom(
      eased([
        [0, 0],
        [200, 10],
        [200, 60],
        [0, 80],
      ]),
    );
    expect(sides!.taper.top).toBeCloseTo(20, 9);
    expect(sides!.taper.bottom).toBeCloseTo(10, 9);
  });
});

describe('the rectangle a block is sawn from', () => {
  test('lies level with a block that is turned in its face', () => {
    const [cos, sin] = [Math.cos(0.2), Math.sin(0.2)];
    const corners = (
      [
        [0, 0],
        [120, 0],
        [120, 30],
        [0, 30],
      ] as const
    ).map(([x, y]): Pair => [x * cos - y * sin, x * sin + y * cos]);
    const { length, height, turned, sides } = sawnFrom(eased(corners));
    expect(sides).toBeUndefined();
    expect(length).toBeCloseTo(120, 9);
    expect(height).toBeCloseTo(30, 9);
    expect(turned).toBeCloseTo(0.2, 9);
  });

  test('is never larger than the box in the face', () => {
    const roof = eased([
      [0, 0],
      [60, -4],
      [120, 0],
      [120, 30],
      [60, 38],
      [0, 30],
    ]);
    const { length, height } = sawnFrom(roof);
    expect(length * height).toBeLessThanOrEqual(120 * 42 + 1e-6);
  });
});

describe('thickness from the sheets there are', () => {
  test('of the same foam, one sheet of 50 goes before two of 25', () => {
    expect(makingOf(48, [25, 50])).toEqual({ way: 'planed', sheet: 50, layers: 1, surplus: 2 });
  });
  test('60 mm takes three sheets of 25 rather than two of 50, which is more foam', () => {
    expect(makingOf(60, [25, 50])).toEqual({ way: 'laminated', sheet: 25, layers: 3, surplus: 15 });
  });
  test('a block much thinner than the sheet is sliced, one as thick is taken as it is', () => {
    expect(makingOf(30, [50])).toMatchObject({ way: 'sliced', surplus: 20 });
    expect(makingOf(50.3, [50])).toMatchObject({ way: 'whole', layers: 1, surplus: 0 });
  });
  test('without sheets there is no way', () => {
    expect(makingOf(30, [])).toBeUndefined();
  });
});
