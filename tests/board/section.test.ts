import { describe, expect, test } from 'vitest';
import { monotone } from '../../src/board/monotone.js';
import { edgeShare, sectionOf, type HalfSection } from '../../src/board/section.js';
import type { MeasuredSection, NumberedSection } from '../../src/job/spec/board.js';

const vs = (from: number, to: number, steps = 40) =>
  Array.from({ length: steps + 1 }, (_, i) => from + ((to - from) * i) / steps);
const size = { half: 240, thickness: 60 };
const numbers = (more: Partial<NumberedSection>): NumberedSection => ({
  kind: 'numbers',
  apex: 0.45,
  above: 0.78,
  below: 0.85,
  crown: 6,
  bottom: { kind: 'flat' },
  ...more,
});

/** How far around a curve of a superellipse lies from its formula, as a share: it is drawn by points close together. */
const DRAWN = 2e-4;
/** The superellipse y^n + (1 − fall)^n = 1 that crosses the diagonal at `fullness` (Lamé): n = ln ½ / ln fullness. */
const fallOf = (fullness: number) => {
  const n = Math.log(0.5) / Math.log(fullness);
  return (y: number) => 1 - Math.max(0, 1 - y ** n) ** (1 / n);
};

describe('a section given by numbers', () => {
  test.each<[string, Partial<NumberedSection>, (y: number) => number]>([
    ['flat', { bottom: { kind: 'flat' } }, () => 0],
    ['hollow', { bottom: { kind: 'concave', depth: 5 } }, (y) => (-5 / 60) * y * y],
    ['rolled', { bottom: { kind: 'roll', depth: 4 } }, (y) => (4 / 60) * y * y],
    ['of a vee', { bottom: { kind: 'vee', depth: 3 } }, (y) => (3 / 60) * y],
    ['full and without crown', { crown: 0, above: 0.95, below: 0.95, apex: 0.2 }, () => 0],
    ['lean and crowned', { crown: 20, above: 0.71, below: 0.72, apex: 0.6 }, () => 0],
  ])('follows the superellipse on deck and bottom, where the bottom is %s', (_, more, contour) => {
    const shape = numbers(more);
    const section = sectionOf(shape, size, undefined);
    const [above, below] = [fallOf(shape.above), fallOf(shape.below)];
    const crown = shape.crown / size.thickness;
    for (const v of vs(0, 2)) {
      const y = section.across(v);
      const z = contour(y) + (shape.apex - contour(1)) * below(y);
      // Beside the apex the curve is upright: there it is read the other way.
      if (y < 0.98) expect(Math.abs(section.up(v) - z), `${v}`).toBeLessThan(DRAWN);
    }
    for (const v of vs(2, 3)) {
      const y = section.across(v);
      const z = 1 - crown * y * y - (1 - crown - shape.apex) * above(y);
      if (y < 0.98) expect(Math.abs(section.up(v) - z), `${v}`).toBeLessThan(DRAWN);
    }
    for (const [v, across, up] of [
      [0, 0, 0],
      [2, 1, shape.apex],
      [3, 0, 1],
    ] as const) {
      expect(section.across(v)).toBeCloseTo(across, 9);
      expect(section.up(v)).toBeCloseTo(up, 9);
    }
  });

  test('is upright at the apex', () => {
    const section = sectionOf(numbers({}), size, undefined);
    for (const v of [2 - 1e-3, 2 + 1e-3]) {
      expect(1 - section.across(v)).toBeLessThan(1e-4);
      expect(Math.abs(section.up(v) - 0.45)).toBeGreaterThan(2e-4);
    }
  });

  test('with a hard edge runs on the contour to it, and straight from there to the apex', () => {
    const bevelled = sectionOf(numbers({ bevel: 36, bottom: { kind: 'vee', depth: 6 } }), size, undefined);
    // 36 of 240 mm in from the rail.
    expect(bevelled.across(1)).toBeCloseTo(0.85, 9);
    for (const v of vs(0, 1)) expect(bevelled.up(v)).toBeCloseTo(0.1 * bevelled.across(v), 6);
    for (const v of vs(1, 2)) {
      expect(bevelled.across(v)).toBeCloseTo(0.85 + 0.15 * (v - 1), 6);
      expect(bevelled.up(v)).toBeCloseTo(0.085 + (0.45 - 0.085) * (v - 1), 6);
    }
    expect(sectionOf(numbers({ bevel: 400 }), size, undefined).across(1)).toBeCloseTo(0.05, 9);
  });

  test('runs along each of its stretches by its length at true size', () => {
    for (const shape of [numbers({}), numbers({ bevel: 36, bottom: { kind: 'roll', depth: 6 } })]) {
      const section = sectionOf(shape, size, 0.7);
      for (const stretch of [0, 1, 2]) {
        const at = vs(stretch, stretch + 1, 3000)
          .map((v) => Math.min(v, stretch + 1 - 1e-12))
          .map((v) => [240 * section.across(v), 60 * section.up(v)] as const);
        const reached = [0];
        at.slice(1).forEach(([y, z], i) => reached.push(reached[i]! + Math.hypot(y - at[i]![0], z - at[i]![1])));
        const total = reached[3000]!;
        reached.forEach((length, i) => expect(Math.abs(length / total - i / 3000), `${i}`).toBeLessThan(1e-3));
      }
    }
  });

  test('a soft bottom is parted where its neighbours have their edge, or else where it is full', () => {
    expect(sectionOf(numbers({}), size, 0.6).across(1)).toBeCloseTo(0.6, 1);
    expect(sectionOf(numbers({}), size, 0.6).across(1)).toBeGreaterThan(0.6);
    expect(sectionOf(numbers({}), size, undefined).across(1)).toBeCloseTo(0.85, 1);
    for (const beyond of [0, 0.99999999, 2]) {
      const section = sectionOf(numbers({}), size, beyond);
      expect(section.across(1)).toBeGreaterThan(0);
      expect(section.across(1) < 1 || section.up(1) < 0.45).toBe(true);
    }
  });
});

test('the edge of a bottom lies where the bevel or the measured points have it, as a share of the half-width', () => {
  expect(edgeShare(numbers({}), 240)).toBeUndefined();
  expect(edgeShare(numbers({ bevel: 60 }), 240)).toBeCloseTo(0.75, 12);
  expect(edgeShare(numbers({ bevel: 239 }), 240)).toBe(0.05);
  const points = [
    { y: 0, z: 0, edge: true },
    { y: 160, z: 2, edge: true },
    { y: 200, z: 30, edge: false },
    { y: 150, z: 55, edge: true },
    { y: 0, z: 60, edge: true },
  ];
  expect(edgeShare({ kind: 'points', points }, 999)).toBeCloseTo(0.8, 12);
  // The keel, the apex and what lies on the deck are no edges of the bottom.
  const soft = points.map((p, i) => ({ ...p, edge: i !== 1 }));
  expect(edgeShare({ kind: 'points', points: soft }, 999)).toBeUndefined();
});

/** How far a place, mm, lies from the section drawn at true size. */
function fromSection(
  section: HalfSection,
  { y, z }: { y: number; z: number },
  half: number,
  thickness: number,
): number {
  let least = Infinity;
  const at = vs(0, 3, 6000).map((v) => [half * section.across(v), thickness * section.up(v)] as const);
  for (let i = 1; i < at.length; i++) {
    const [[ay, az], [by, bz]] = [at[i - 1]!, at[i]!];
    const length = (by - ay) ** 2 + (bz - az) ** 2;
    const share = length > 0 ? Math.min(1, Math.max(0, ((y - ay) * (by - ay) + (z - az) * (bz - az)) / length)) : 0;
    least = Math.min(least, Math.hypot(y - ay - share * (by - ay), z - az - share * (bz - az)));
  }
  return least;
}

describe('a section that was measured', () => {
  const shape: MeasuredSection = {
    kind: 'points',
    points: [
      { y: 0, z: 3, edge: false },
      { y: 70, z: 4, edge: false },
      { y: 150, z: 9, edge: false },
      { y: 180, z: 14, edge: true },
      { y: 214, z: 26, edge: false },
      { y: 221, z: 33, edge: false },
      { y: 190, z: 55, edge: false },
      { y: 90, z: 62, edge: false },
      { y: 0, z: 63, edge: false },
    ],
  };
  const [half, thick] = [221, 60];
  const own = sectionOf(shape, { half, thickness: thick }, undefined);

  test('runs through every point', () => {
    for (const { y, z } of shape.points) expect(fromSection(own, { y, z: z - 3 }, half, thick)).toBeLessThan(1e-3);
    expect([own.across(0), own.up(0), own.across(3), own.up(3)].map((each) => each.toFixed(9))).toEqual(
      [0, 0, 0, 1].map((each) => each.toFixed(9)),
    );
    expect(own.across(2)).toBeCloseTo(1, 9);
    expect(own.up(2)).toBeCloseTo(0.5, 9);
    expect(own.across(1)).toBeCloseTo(180 / 221, 9);
    expect(own.up(1)).toBeCloseTo(11 / 60, 9);
  });

  // Between points y and z are each a monotone cubic (held against d3-shape by itself) over the chords' length, a run
  // from one hard edge to the next, level on the centreline.
  test('is smooth between them over the length of their chords, broken at the hard edge', () => {
    const runs = [shape.points.slice(0, 4), shape.points.slice(3)];
    runs.forEach((run, r) => {
      const u = run.reduce<number[]>(
        (sums, p, i) => [...sums, i ? sums[i - 1]! + Math.hypot(p.y - run[i - 1]!.y, p.z - run[i - 1]!.z) : 0],
        [],
      );
      const y = monotone(u, run.map((p) => p.y)); // prettier-ignore
      const z = monotone(u, run.map((p) => p.z), r ? { last: 0 } : { first: 0 }); // prettier-ignore
      for (let i = 1; i < run.length; i++)
        for (const share of [0.25, 0.5, 0.75]) {
          const at = u[i - 1]! + share * (u[i]! - u[i - 1]!);
          const place = { y: y(at), z: z(at) - 3 };
          expect(fromSection(own, place, half, thick), `${r} ${i} ${share}`).toBeLessThan(5e-3);
        }
    });
  });

  test('of hard edges alone is the polygon through them', () => {
    const points = shape.points.map((p) => ({ ...p, edge: true }));
    const section = sectionOf({ kind: 'points', points }, { half, thickness: thick }, undefined);
    points.slice(1).forEach((p, i) => {
      for (const share of [0.3, 0.5, 0.9]) {
        const q = points[i]!;
        const place = { y: q.y + share * (p.y - q.y), z: q.z + share * (p.z - q.z) - 3 };
        expect(fromSection(section, place, half, thick), `${i}`).toBeLessThan(1e-3);
      }
    });
  });

  test('without a hard edge is parted where its neighbours are, or at 85 hundredths', () => {
    const soft = { ...shape, points: shape.points.map((p) => ({ ...p, edge: false })) };
    for (const share of [0.5, undefined]) {
      const at = sectionOf(soft, { half, thickness: thick }, share).across(1);
      expect(at).toBeGreaterThan(share ?? 0.85);
      expect(at).toBeLessThan((share ?? 0.85) + 0.03);
    }
  });

  test('of a round board is round', () => {
    const points = Array.from({ length: 25 }, (_, i) => (Math.PI * i) / 24).map((a) => ({
      y: i0(200 * Math.sin(a)),
      z: 200 - 200 * Math.cos(a),
      edge: false,
    }));
    const section = sectionOf({ kind: 'points', points }, { half: 200, thickness: 400 }, undefined);
    for (const v of vs(0, 3, 300)) {
      const radius = Math.hypot(200 * section.across(v), 400 * section.up(v) - 200);
      expect(Math.abs(radius - 200), `${v}`).toBeLessThan(0.15);
    }
  });
  /** Rounding keeps no point off the centreline. */
  const i0 = (value: number) => (Math.abs(value) < 1e-9 ? 0 : value);
});
