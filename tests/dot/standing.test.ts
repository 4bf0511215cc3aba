import { Clipper, FillRule } from 'clipper2-ts';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { DrawnChamber } from '../../src/chamber/row.js';
import type { Point } from '../../src/contour/point.js';
import { priceOf, standingAfter, standingOf, type StandingPart, type PriceRules } from '../../src/dot/standing.js';
import type { DotWay } from '../../src/job/spec/dots.js';
import { farOn, nearOn, rowTo } from './rows.js';

const SEED = 20261127;
const row = rowTo(60, 0);
const near = nearOn(row);

// prettier-ignore
const box = (from: number, to: number, low: number, high: number): Point[] =>
  [[from, low], [to, low], [to, high], [from, high]];
const shape = (profile: readonly Point[], deep = 60, place = 1): DrawnChamber => ({
  row: 'R1',
  place,
  profile,
  depth: [0, deep],
  volume: 0,
});
const rules = (may: readonly DotWay[], more: Partial<PriceRules> = {}): PriceRules => ({
  may,
  clearance: 2,
  web: 20,
  smallest: { length: 40, height: 20, depth: 20 },
  ...more,
});
const stands = (...shapes: readonly DrawnChamber[]) => standingOf(shapes).get('R1')!;
const left = (parts: readonly StandingPart[]) => parts.map(({ from, to }) => [from, to]);
/** A dot of 16 mm with 2 mm around it: 20 mm along the face. */
const dot = (s: number, standing: readonly StandingPart[], of: PriceRules, at = near, z = 50) =>
  priceOf(at, [s, z], 8, standing, of);

/** Volume of a profile between two marks, mm³, by clipper2-ts. */
function volume(profile: readonly Point[], from: number, to: number, deep: number): number {
  const scale = 1000;
  const path = (points: readonly Point[]) => [
    points.map(([x, y]) => ({ x: Math.round(x * scale), y: Math.round(y * scale) })),
  ];
  const shared = Clipper.intersect(path(profile), path(box(from, to, -1000, 1000)), FillRule.NonZero);
  return (deep * Math.abs(shared.reduce((sum, each) => sum + Clipper.area(each), 0))) / scale ** 2;
}

test(`what stands of a chamber holds its volume, and any stretch of it its own (clipper2-ts, seed ${SEED})`, () => {
  const profile: Point[] = [[100, 10], [180, 0], [300, 20], [310, 60], [200, 90], [95, 50]]; // prettier-ignore
  const [whole] = stands(shape(profile, 45));
  expect([whole!.from, whole!.to]).toEqual([95, 310]);
  expect(whole!.volume).toBeCloseTo(volume(profile, 0, 1000, 45), -2);
  fc.assert(
    fc.property(fc.integer({ min: 130, max: 270 }), (s) => {
      const price = dot(s, [whole!], rules(['split'], { smallest: { length: 10, height: 1, depth: 1 } }))!;
      const parts = standingAfter([whole!], price);
      expect(left(parts)).toEqual([[95, s - 10], [s + 10, 310]]); // prettier-ignore
      for (const part of parts) {
        const exact = volume(profile, part.from, part.to, 45);
        expect(Math.abs(part.volume - exact)).toBeLessThan(20);
      }
      const gone = volume(profile, s - 10, s + 10, 45);
      expect(Math.abs(price.lost - gone)).toBeLessThan(20);
      expect(Number.isInteger(price.lost)).toBe(true);
    }),
    { seed: SEED, numRuns: 60 },
  );
});

test('chambers stand row by row, in their order', () => {
  const all = standingOf([
    shape(box(0, 50, 0, 40)),
    { ...shape(box(0, 9, 0, 9)), row: 'L1' },
    shape(box(70, 90, 0, 40)),
  ]);
  expect([...all.keys()]).toEqual(['R1', 'L1']);
  expect(left(all.get('R1')!)).toEqual([[0, 50], [70, 90]]); // prettier-ignore
  expect(all.get('R1')![0]!.volume).toBe(50 * 40 * 60);
});

// By hand: chambers 100 mm high and 60 deep, 6000 mm³ to the millimetre.
describe('the price of a dot', () => {
  const standing = stands(shape(box(0, 200, 0, 100)), shape(box(230, 400, 0, 100), 60, 2));

  test('is nothing in a web as broad as it with its clearance, whatever is allowed', () => {
    expect(dot(215, standing, rules([]))).toEqual({ lost: 0, cut: [], swallowed: false, keepOff: [205, 225] });
    expect(dot(210, standing, rules([]))).toMatchObject({ lost: 0 });
    expect(dot(220, standing, rules([]))).toMatchObject({ lost: 0 });
    expect(dot(209.9, standing, rules([]))).toBeUndefined();
    expect(dot(220.1, standing, rules([]))).toBeUndefined();
  });

  test('is the stretch that is cut off where a chamber is trimmed, from the side that leaves more', () => {
    const price = dot(195, standing, rules(['trim']))!;
    expect(price).toMatchObject({ lost: 15 * 6000, swallowed: false, keepOff: [185, 205] });
    expect(left(standingAfter(standing, price))).toEqual([[0, 185], [230, 400]]); // prettier-ignore
    const behind = dot(240, standing, rules(['trim']))!;
    expect(behind).toMatchObject({ lost: 20 * 6000, keepOff: [230, 250] });
    expect(left(standingAfter(standing, behind))).toEqual([[0, 200], [250, 400]]); // prettier-ignore
    // In the middle, all beyond it goes too, and the row keeps off to its end.
    const middle = dot(120, standing, rules(['trim']))!;
    expect(middle).toMatchObject({ lost: 90 * 6000, keepOff: [110, 200] });
    expect(left(standingAfter(standing, middle))).toEqual([[0, 110], [230, 400]]); // prettier-ignore
    const other = dot(80, standing, rules(['trim']))!;
    expect(other).toMatchObject({ lost: 90 * 6000, keepOff: [0, 90] });
    expect(left(standingAfter(standing, other))).toEqual([[90, 200], [230, 400]]); // prettier-ignore
  });

  test('is the dot and what its web lacks where a chamber is split, and never a part shorter than the smallest', () => {
    const price = dot(100, standing, rules(['split']))!;
    expect(price).toMatchObject({ lost: 20 * 6000, keepOff: [90, 110] });
    expect(left(standingAfter(standing, price))).toEqual([[0, 90], [110, 200], [230, 400]]); // prettier-ignore
    const broad = dot(100, standing, rules(['split'], { web: 30 }))!;
    expect(broad).toMatchObject({ lost: 30 * 6000, keepOff: [90, 110] });
    expect(left(standingAfter(standing, broad))).toEqual([[0, 85], [115, 200], [230, 400]]); // prettier-ignore
    expect(dot(50, standing, rules(['split']))).toMatchObject({ lost: 20 * 6000 });
    expect(dot(49, standing, rules(['split']))).toBeUndefined();
    expect(dot(150, standing, rules(['split']))).toMatchObject({ lost: 20 * 6000 });
    expect(dot(151, standing, rules(['split']))).toBeUndefined();
    expect(dot(49, standing, rules(['split', 'trim']))).toMatchObject({ lost: 59 * 6000, keepOff: [0, 59] });
  });

  test('is the whole chamber where nothing long enough is left on either side', () => {
    const short = stands(shape(box(0, 60, 0, 100)));
    const price = dot(30, short, rules(['trim']))!;
    expect(price.lost).toBe(60 * 6000);
    expect(standingAfter(short, price)).toEqual([]);
    expect(left(standingAfter(short, dot(10, short, rules(['trim']))!))).toEqual([[20, 60]]);
    expect(standingAfter(short, dot(11, short, rules(['trim']))!)).toEqual([]);
  });

  test('is nothing where a chamber swallows it: it lies wholly inside, with its clearance, and may', () => {
    const may = rules(['swallow', 'trim']);
    expect(dot(100, standing, may)).toEqual({ lost: 0, cut: [], swallowed: true, keepOff: [90, 110] });
    expect(dot(10, standing, may)).toMatchObject({ lost: 0, swallowed: true });
    expect(dot(9, standing, may)).toMatchObject({ lost: 19 * 6000, swallowed: false });
    expect(dot(190, standing, may)).toMatchObject({ lost: 0, swallowed: true });
    expect(dot(191, standing, may)).toMatchObject({ swallowed: false });
    expect(dot(100, standing, may, near, 10)).toMatchObject({ swallowed: true });
    expect(dot(100, standing, may, near, 9)).toMatchObject({ swallowed: false });
    expect(dot(100, standing, rules(['trim']))).toMatchObject({ swallowed: false });
  });

  test('counts what a chamber that was cut already has left, and no more', () => {
    const once = standingAfter(standing, dot(100, standing, rules(['split']))!);
    expect(dot(100, once, rules([]))).toMatchObject({ lost: 0 });
    expect(dot(85, once, rules(['trim']))).toMatchObject({ lost: 15 * 6000, keepOff: [75, 95] });
    // What was cut away swallows nothing.
    expect(dot(95, once, rules(['swallow', 'trim']))).toMatchObject({ swallowed: false });
  });
});

describe('at the far side of a piece', () => {
  const far = farOn(row);

  test('a chamber that ends before the joint is not met, one that comes nearer than the clearance is', () => {
    const of = (deep: number) => dot(100, stands(shape(box(0, 200, 0, 100), deep)), rules(['split']), far)!.lost;
    expect([of(57), of(58), of(58.1)]).toEqual([0, 0, Math.round(20 * 100 * 58.1)]);
  });

  test('only one that comes out there swallows a dot', () => {
    const of = (deep: number) =>
      dot(100, stands(shape(box(0, 200, 0, 100), deep)), rules(['swallow', 'trim']), far)!.swallowed;
    expect([of(59.9), of(60)]).toEqual([false, true]);
  });

  test('a dot on a joint at an angle lies where that is, square across', () => {
    const turn = 0.08;
    const flared = farOn(rowTo(60, turn));
    const price = dot(500, stands(shape(box(0, 900, 0, 100), 200)), rules(['split']), flared)!;
    const middle = 500 * Math.cos(turn);
    expect(price.keepOff[0]).toBeCloseTo(middle - 10, 6);
    expect(price.keepOff[1]).toBeCloseTo(middle + 10, 6);
    // It comes out over the dot where it is deep enough at the dot's far edge.
    const deepest = 60 + 508 * Math.sin(turn);
    const of = (deep: number) =>
      dot(500, stands(shape(box(0, 900, 0, 100), deep)), rules(['swallow', 'trim']), flared)!.swallowed;
    expect([of(deepest - 0.01), of(deepest + 0.01)]).toEqual([false, true]);
    // And is met where it comes near at its near edge.
    const nearest = 60 + 490 * Math.sin(turn) - 2;
    const lost = (deep: number) => dot(500, stands(shape(box(0, 900, 0, 100), deep)), rules(['split']), flared)!.lost;
    expect([lost(nearest - 0.01), lost(nearest + 0.01) > 0]).toEqual([0, true]);
  });
});
