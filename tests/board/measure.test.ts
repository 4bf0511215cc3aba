import { describe, expect, test } from 'vitest';
import { simpson } from '../../src/board/measure.js';

describe("Simpson's rule", () => {
  // C. B. Barrass and D. R. Derrett, "Ship Stability for Masters and Mates", ch. 10, p. 74: half-ordinates 20 m apart,
  // area 1207 m².
  test('gives the waterplane of the text', () => {
    const area = 2 * simpson([0, 3.7, 5.9, 7.6, 7.5, 4.6, 0.1], 20);
    expect(area).toBeCloseTo(1206.667, 3);
    expect(Math.round(area)).toBe(1207);
  });

  // Worked example with half sectional areas 10 m apart (transtutors.com, question 286740): half 5874, whole 11748 m³.
  test('gives the displacement volume of the worked example', () => {
    expect(2 * simpson([0, 19.4, 45.7, 73.6, 94.4, 104.1, 97.1, 76.4, 48.5, 23.5, 2.8], 10)).toBeCloseTo(11748, 6);
  });

  // Sectional areas of the Wigley hull, L 100, B 10, T 5: exact 2222.2222 with any even number of intervals, where the
  // trapezoid rule gives 1666.667, 2083.333 and 2200.000 (closed form).
  test.each([
    [2, 1666.667],
    [4, 2083.333],
    [10, 2200],
  ])('is exact on the Wigley hull with %d intervals, where the trapezoid rule is not', (intervals, trapezoid) => {
    const areas = Array.from(
      { length: intervals + 1 },
      (_, i) => (2 / 3) * 10 * 5 * (1 - ((2 * i) / intervals - 1) ** 2),
    );
    expect(simpson(areas, 100 / intervals)).toBeCloseTo(2222.2222, 4);
    const byTrapezoid = areas.slice(1).reduce((sum, area, i) => sum + ((area + areas[i]!) / 2) * (100 / intervals), 0);
    expect(byTrapezoid).toBeCloseTo(trapezoid, 3);
  });

  test('refuses an even number of ordinates', () => {
    expect(() => simpson([1, 2, 3, 4], 1)).toThrow(
      "Simpson's rule takes an odd number of ordinates, at least 3, not 4",
    );
  });
});
