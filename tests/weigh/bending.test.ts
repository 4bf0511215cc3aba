import { expect, test } from 'vitest';
import { bendingOf, rectangle } from '../../src/weigh/bending.js';

/** Stress at a height in one part: M (z − axis) E / EI (Gere, "Mechanics of Materials", 7th ed., ch. 6.2). */
function stress(moment: number, z: number, modulus: number, { axis, stiffness }: { axis: number; stiffness: number }) {
  return (moment * (z - axis) * modulus) / stiffness;
}

// Gere, 7th ed., problem 6.2-7: b 8 in, faces 0.25 in of 10.5e6 psi, core 5.5 in of 12,000 psi, M 40 k-in: EI 348.7e6
// lb-in²; 3610 and 4 psi.
test('an aluminium and foam sandwich bends as the textbook says', () => {
  const whole = bendingOf([
    rectangle(10.5e6, 8, 0, 0.25),
    rectangle(12000, 8, 0.25, 5.75),
    rectangle(10.5e6, 8, 5.75, 6),
  ]);
  expect(whole.axis).toBeCloseTo(3, 12);
  expect(whole.stiffness / 1e6).toBeCloseTo(348.7, 1);
  expect(Math.round(stress(40000, 6, 10.5e6, whole) / 10) * 10).toBe(3610);
  expect(Math.round(stress(40000, 5.75, 12000, whole))).toBe(4);
});

// Gere, 7th ed., problem 6.2-8: b 50 mm, faces 4 mm of 75 GPa, core 92 mm of 1.2 GPa, M 275 N·m: 14.1 and 0.21 MPa
// (answers from memory).
test('a fibreglass and plastic sandwich bends as the textbook says', () => {
  const whole = bendingOf([rectangle(75000, 50, 0, 4), rectangle(1200, 50, 4, 96), rectangle(75000, 50, 96, 100)]);
  expect(whole.stiffness).toBeCloseTo(75000 * 922133.33 + 1200 * 3244533.33, -5);
  expect(stress(275e3, 100, 75000, whole)).toBeCloseTo(14.1, 1);
  expect(stress(275e3, 96, 1200, whole)).toBeCloseTo(0.21, 2);
});

// Gere, example 6-1: wood 4 × 6 in over a steel strip 4 × 0.5 in, n = 20, M 60 k-in: axis 5.031 in down, steel 7620 psi
// (from memory).
test('wood over a steel strip has its axis drawn down to the steel', () => {
  const whole = bendingOf([rectangle(30e6, 4, 0, 0.5), rectangle(1.5e6, 4, 0.5, 6.5)]);
  expect(6.5 - whole.axis).toBeCloseTo(5.03125, 10);
  expect(-stress(60000, 0, 30e6, whole)).toBeCloseTo(7620.9, 0);
  expect(-stress(60000, 6.5, 1.5e6, whole)).toBeCloseTo(-1305.3, 0);
});

// T section, flange 20 × 4 at the bottom and web 4 × 16: centre 6.444 mm up (coursehero.com/file/6071111), I 5027.56
// mm⁴ (parallel axis).
test('a T section has its centre and its moment by the parallel axis theorem', () => {
  const { axis, stiffness } = bendingOf([rectangle(1, 20, 0, 4), rectangle(1, 4, 4, 20)]);
  expect(axis).toBeCloseTo(6.444, 3);
  expect(stiffness).toBeCloseTo(5027.56, 2);
});

// "Engineering Statics: Open and Interactive", example 10.4.1: three boards of 1.5 × 5.5 in on edge, 62.390625 in⁴; as
// an I-beam, 226.015625 in⁴.
test('three boards as an I-beam are 3.62 times as stiff as side by side', () => {
  const beside = bendingOf([rectangle(1, 4.5, 0, 5.5)]);
  const beam = bendingOf([rectangle(1, 5.5, 0, 1.5), rectangle(1, 1.5, 1.5, 7), rectangle(1, 5.5, 7, 8.5)]);
  expect(beside.stiffness).toBeCloseTo(62.390625, 9);
  expect(beam.stiffness).toBeCloseTo(226.015625, 9);
});

test('what is taken out counts as less than nothing', () => {
  const tube = bendingOf([rectangle(10, 40, 0, 60), rectangle(-10, 20, 20, 40)]);
  expect(tube.axis).toBeCloseTo(30, 9);
  expect(tube.stiffness).toBeCloseTo((10 * (40 * 60 ** 3 - 20 * 20 ** 3)) / 12, 6);
});
