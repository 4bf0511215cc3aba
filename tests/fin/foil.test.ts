import { expect, test } from 'vitest';
import { halfThickness } from '../../src/fin/foil.js';

/** Stations of the printed tables, % of the chord. */
const AT = [1.25, 2.5, 5, 7.5, 10, 15, 20, 25, 30, 40, 50, 60, 70, 80, 90, 95, 100];

/**
 * Ordinates, % of the chord. I. H. Abbott and A. E. von Doenhoff, "Theory of Wing Sections" (1959), appendix III: 0012
 * and 0009 from memory, 0006 as a public collection of airfoil points has it.
 */
const PRINTED: readonly (readonly [thick: number, ordinates: readonly number[]])[] = [
  [
    12,
    [
      1.894, 2.615, 3.555, 4.2, 4.683, 5.345, 5.737, 5.941, 6.002, 5.803, 5.294, 4.563, 3.664, 2.623, 1.448, 0.807,
      0.126,
    ],
  ],
  [
    9,
    [
      1.42, 1.961, 2.666, 3.15, 3.512, 4.009, 4.303, 4.456, 4.501, 4.352, 3.971, 3.423, 2.748, 1.967, 1.086, 0.605,
      0.095,
    ],
  ],
  [
    6,
    [
      0.947, 1.307, 1.777, 2.1, 2.341, 2.673, 2.869, 2.971, 3.001, 2.902, 2.647, 2.282, 1.832, 1.312, 0.724, 0.403,
      0.063,
    ],
  ],
];
/** The last printed digit. */
const DIGIT = 0.001;

test.each(PRINTED)('the form of %s %% thickness has its ordinates as printed', (thick, ordinates) => {
  for (const [i, printed] of ordinates.entries())
    expect(Math.abs(thick * halfThickness(AT[i]! / 100) - printed), `at ${AT[i]} %`).toBeLessThan(DIGIT);
});

test('the leading edge has the published radius of 1.1019 t²', () => {
  // NACA Report 460: a circle through the edge rises like √(2 r x).
  const [x, thick] = [1e-9, 0.12];
  expect((thick * halfThickness(x)) ** 2 / (2 * x)).toBeCloseTo(1.1019 * thick ** 2, 5);
});
