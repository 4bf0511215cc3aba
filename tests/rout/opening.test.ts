import { sharpCorners } from '../../src/contour/sharp.js';
import { areaOf } from '../../src/contour/area.js';
import { easeCorners } from '../../src/contour/ease.js';
import { describe, expect, test } from 'vitest';
import { guideOffset, openingOf } from '../../src/rout/opening.js';

const IN = 25.4;

describe('a guide stands off its cut by half of what the bush is wider than the cutter', () => {
  // "Understanding Guide Bushings", WOOD magazine, as quoted at woodworking.stackexchange.com/questions/7205.
  test('a 3/4 in bush with a 1/2 in cutter: 1/8 in', () => {
    expect(guideOffset(0.75 * IN, 0.5 * IN)).toBeCloseTo(IN / 8, 12);
  });
  // Wealden Tool (a maker of cutters), tips, "Guide bush cutter offset", wealdentool.com/acatalog/tips_13.html:
  // (outside of bush − cutter) / 2.
  test('a 30 mm bush with a 10 mm cutter: 10 mm', () => expect(guideOffset(30, 10)).toBe(10));
  // The same rule, another pair: ukworkshop.co.uk/threads/calculating-guide-bush-sizes.8513.
  test('a 15 mm bush with a 9 mm cutter: 3 mm', () => expect(guideOffset(15, 9)).toBe(3));
});

describe('an opening', () => {
  const pocket = (length: number, height: number, corner: number) =>
    easeCorners(
      [
        [0, 0],
        [length, 0],
        [length, height],
        [0, height],
      ],
      corner,
    )!.contour;
  const sizeOf = (contour: readonly { x: number; y: number }[]) => {
    const xs = contour.map(({ x }) => x);
    const ys = contour.map(({ y }) => y);
    return [Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys)];
  };

  // routerforums.com/threads/bushings-and-bits.4249
  test('for a pocket of 8 × 4 in with a 3/4 in bush and a 1/4 in cutter is 8 1/2 × 4 1/2 in', () => {
    const opening = openingOf(pocket(8 * IN, 4 * IN, IN / 8), IN / 4, 0.75 * IN)!;
    const [length, height] = sizeOf(opening);
    expect(length).toBeCloseTo(8.5 * IN, 9);
    expect(height).toBeCloseTo(4.5 * IN, 9);
  });

  // The bush's radius makes the cutter's radius: routerforums.com, "Bit radius or guide radius"; area of a rounded
  // rectangle l·w − (4 − π)·r².
  test('has corners of the bush’s radius, from which the cutter makes corners of its own', () => {
    const opening = openingOf(pocket(100, 60, IN / 8), IN / 4, (3 / 8) * IN)!;
    const out = IN / 8;
    expect(areaOf(opening)).toBeCloseTo((100 + out) * (60 + out) - (4 - Math.PI) * ((3 / 16) * IN) ** 2, 6);
  });

  test('never has a corner tighter than the bush, also where the chamber turns only a little', () => {
    const cut = easeCorners(
      [
        [0, 0],
        [150, -6],
        [300, 0],
        [300, 60],
        [140, 66],
        [0, 60],
      ],
      6,
    )!.contour;
    const opening = openingOf(cut, 12, 20)!;
    opening.forEach(({ x, y, bulge }, i) => {
      if (!bulge) return;
      const next = opening[(i + 1) % opening.length]!;
      const radius = Math.hypot(next.x - x, next.y - y) / 2 / Math.sin(2 * Math.atan(bulge));
      expect(radius).toBeCloseTo(10, 6);
    });
    expect(opening.filter(({ bulge }) => bulge)).toHaveLength(6);
  });

  test('is refused where an edge is too short for the bush', () => {
    expect(openingOf(pocket(30, 4, 1), 2, 40)).toBeDefined();
    expect(
      openingOf(
        [
          { x: 0, y: 0 },
          { x: 30, y: 0 },
          { x: 30, y: 1 },
          { x: 29, y: 8 },
          { x: 0, y: 8 },
        ],
        4,
        40,
      ),
    ).toBeUndefined();
  });

  test('is drawn from the sharp corners, which easing does not lose', () => {
    const corners = [
      [3, 1],
      [200, -5],
      [198, 70],
      [0, 64],
    ] as const;
    const found = sharpCorners(easeCorners(corners, 6)!.contour);
    found.forEach(([x, y], i) => {
      expect(x).toBeCloseTo(corners[i]![0], 9);
      expect(y).toBeCloseTo(corners[i]![1], 9);
    });
    expect(found).toHaveLength(4);
  });
});
