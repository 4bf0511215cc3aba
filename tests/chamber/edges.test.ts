import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Point } from '../../src/contour/point.js';
import { areaBetween, crop, edgesWithin, heightAt, leastHeight, type HeightBounds } from '../../src/chamber/edges.js';

const SEED = 20261127;
/** A straight edge may stray so far from the bounds, mm: half of what a caliper shows. */
const STRAY = 0.04;

/** Height of a chain of points at `s`, as its straight pieces are drawn. */
const on = (points: readonly Point[], s: number): number => {
  const i = points.findIndex(([at], k) => k > 0 && at >= s);
  const [a, b] = [points[i - 1]!, points[i]!];
  return a[1] + ((b[1] - a[1]) * (s - a[0])) / (b[0] - a[0]);
};

/** Bounds at uneven places, from doll's house to ship: mm. */
const bounds = fc
  .record({
    size: fc.constantFrom(0.1, 1, 100),
    steps: fc.array(fc.integer({ min: 1, max: 9 }), { minLength: 1, maxLength: 9 }),
    tops: fc.array(fc.integer({ min: 30, max: 60 }), { minLength: 10, maxLength: 10 }),
    bottoms: fc.array(fc.integer({ min: 0, max: 25 }), { minLength: 10, maxLength: 10 }),
  })
  .map(({ size, steps, tops, bottoms }): HeightBounds => {
    const s = [size * 7];
    for (const step of steps) s.push(s[s.length - 1]! + size * step);
    return { s, top: s.map((_, i) => size * tops[i]!), bottom: s.map((_, i) => size * bottoms[i]!) };
  });
const each = (claim: (bounds: HeightBounds) => void) =>
  fc.assert(fc.property(bounds, claim), { seed: SEED, numRuns: 300 });
const pointsOf = (s: readonly number[], z: readonly number[]) => s.map((at, i): Point => [at, z[i]!]);

describe(`edges that follow the skins (seed ${SEED})`, () => {
  test('stray from every bound by no more than a hair, and begin and end with it', () => {
    each(({ s, top, bottom }) => {
      const drawn = edgesWithin('follow', { s, top, bottom }, 0);
      for (const [edge, bound] of [
        [drawn.top, top],
        [drawn.bottom, bottom],
      ] as const) {
        s.forEach((at, i) => expect(Math.abs(on(edge, at) - bound[i]!)).toBeLessThanOrEqual(STRAY + 1e-9));
        expect(edge[0]).toEqual([s[0], bound[0]]);
        expect(edge[edge.length - 1]).toEqual([s[s.length - 1], bound[s.length - 1]]);
        const given = pointsOf(s, bound).map(String);
        for (const point of edge) expect(given).toContain(String(point));
      }
    });
  });

  test('have as few points as a line that turns: none on a straight bound, one at a bend that shows', () => {
    const s = [0, 10, 20, 30, 40];
    const straight = s.map((at) => 50 + at / 10);
    const bent = [50, 50, 50.05, 50, 50];
    const hardly = [50, 50, 50.039, 50, 50];
    const points = (top: number[]) => edgesWithin('follow', { s, top, bottom: s.map(() => 0) }, 0).top.length;
    expect([points(straight), points(hardly)]).toEqual([2, 2]);
    expect(points(bent)).toBe(3);
    expect(points([50, 51, 52, 51, 50])).toBe(3);
  });

  test('have no point so near to an end that the corner has no room, but one just beyond it', () => {
    const s = [0, 4, 10, 30, 34, 40];
    const top = [50, 52, 50, 50, 53, 50];
    const { top: drawn } = edgesWithin('follow', { s, top, bottom: s.map(() => 0) }, 10);
    expect(drawn.map(([at]) => at)).toEqual([0, 40]);
    const near = edgesWithin('follow', { s, top, bottom: s.map(() => 0) }, 6).top;
    expect(near.map(([at]) => at)).toEqual([0, 30, 34, 40]);
    const wide = edgesWithin('follow', { s, top, bottom: s.map(() => 0) }, 4).top;
    expect(wide.map(([at]) => at)).toEqual([0, 4, 10, 30, 34, 40]);
  });
});

// Brute force: every line through two of the points that keeps to its side of all of them.
test(`straight edges keep within the bounds, and no other takes more out (seed ${SEED})`, () => {
  each(({ s, top, bottom }) => {
    const drawn = edgesWithin('straight', { s, top, bottom }, 0);
    const last = s.length - 1;
    const middle = (s[0]! + s[last]!) / 2;
    for (const [edge, bound, sign] of [
      [drawn.top, top, 1],
      [drawn.bottom, bottom, -1],
    ] as const) {
      expect(edge.map(([at]) => at)).toEqual([s[0], s[last]]);
      const room = s[last]! * 1e-9;
      s.forEach((at, i) => expect(sign * (bound[i]! - on(edge, at))).toBeGreaterThanOrEqual(-room));
      let best = -Infinity;
      for (let i = 0; i < last; i++)
        for (let j = i + 1; j <= last; j++) {
          const slope = (bound[j]! - bound[i]!) / (s[j]! - s[i]!);
          const line = (at: number) => bound[i]! + slope * (at - s[i]!);
          if (s.every((at, k) => sign * (bound[k]! - line(at)) >= -room)) best = Math.max(best, sign * line(middle));
        }
      expect(sign * on(edge, middle)).toBeCloseTo(best, 6);
    }
  });
});

// Brute force: every two ends, and as high and low as anything between them lets it.
test(`a square chamber is the largest rectangle within the bounds (seed ${SEED})`, () => {
  each(({ s, top, bottom }) => {
    const { top: high, bottom: low } = edgesWithin('square', { s, top, bottom }, 0);
    expect([high.length, low.length]).toEqual([2, 2]);
    expect(high.map(([at]) => at)).toEqual(low.map(([at]) => at));
    const [[from, up], [to, up2]] = high as [Point, Point];
    const [[, down], [, down2]] = low as [Point, Point];
    expect([up, down]).toEqual([up2, down2]);
    s.forEach((at, i) => {
      if (at < from || at > to) return;
      expect(up).toBeLessThanOrEqual(top[i]!);
      expect(down).toBeGreaterThanOrEqual(bottom[i]!);
    });
    let best = 0;
    for (let i = 0; i < s.length; i++)
      for (let j = i + 1; j < s.length; j++) {
        const height = Math.min(...top.slice(i, j + 1)) - Math.max(...bottom.slice(i, j + 1));
        best = Math.max(best, (s[j]! - s[i]!) * height);
      }
    expect((to - from) * (up - down)).toBeCloseTo(best, 6);
  });
});

describe('an edge', () => {
  const edge: Point[] = [
    [100, 10],
    [120, 20],
    [160, 0],
  ];
  const flat: Point[] = [
    [100, -5],
    [160, -5],
  ];

  test('is straight between its points, and goes on straight beyond its ends', () => {
    expect([100, 110, 120, 140, 160, 80, 180].map((s) => heightAt(edge, s))).toEqual([10, 15, 20, 10, 0, 0, -10]);
    expect(
      heightAt(
        [
          [3, 7],
          [3, 9],
        ],
        3,
      ),
    ).toBe(7);
  });

  // By hand: trapezoids 20 · 15 and 40 · 10 over the base line, and 60 · 5 below it.
  test('and another have the area of the figure between them', () => {
    expect(areaBetween({ top: edge, bottom: flat })).toBe(300 + 400 + 300);
    expect(areaBetween({ top: flat, bottom: edge })).toBe(-1000);
  });

  test('and another are least apart at a point of one or the other', () => {
    expect(leastHeight({ top: edge, bottom: flat })).toBe(5);
    expect(leastHeight({ top: [[100, 40], [160, 40]], bottom: edge })).toBe(20); // prettier-ignore
    expect(leastHeight({ top: [[100, 40], [160, 10]], bottom: edge })).toBe(10); // prettier-ignore
  });

  test('cut to a stretch keeps what lies within it and ends on the old line', () => {
    const cut = crop({ top: edge, bottom: flat }, 110, 140);
    expect(cut.top).toEqual([
      [110, 15],
      [120, 20],
      [140, 10],
    ]);
    expect(cut.bottom).toEqual([
      [110, -5],
      [140, -5],
    ]);
    expect(crop({ top: edge, bottom: flat }, 120, 160).top).toEqual([
      [120, 20],
      [160, 0],
    ]);
  });
});
