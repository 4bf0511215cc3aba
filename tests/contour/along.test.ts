import { expect, test } from 'vitest';
import { areaOf } from '../../src/contour/area.js';
import { nearestOn } from '../../src/contour/nearest.js';
import { perimeter } from '../../src/contour/perimeter.js';
import type { Point } from '../../src/contour/point.js';
import { reversed } from '../../src/contour/reversed.js';
import { spanAt } from '../../src/contour/span.js';
import { support } from '../../src/contour/support.js';

/** A slot: two straights of 60 mm and two half circles of 10 mm. */
const slot = [
  { x: 0, y: 0 },
  { x: 60, y: 0, bulge: 1 },
  { x: 60, y: 20 },
  { x: 0, y: 20, bulge: 1 },
];

test('a slot reaches as far as its half circles do, in every direction', () => {
  // The support function of a segment with a disc: that of the segment and the radius.
  for (let angle = 0; angle < 2 * Math.PI; angle += 0.1) {
    const [ux, uy] = [Math.cos(angle), Math.sin(angle)];
    expect(support(slot, angle)).toBeCloseTo(Math.max(0, 60 * ux) + 10 * uy + 10, 9);
  }
});

test('a slot is as long around as its straights and its circle', () => {
  expect(perimeter(slot)).toBeCloseTo(120 + 20 * Math.PI, 9);
});

test('an arc that bends inward counts with its length too', () => {
  const bitten = [
    { x: 0, y: 0 },
    { x: 10, y: 0, bulge: -1 },
    { x: 20, y: 0 },
    { x: 20, y: 30 },
    { x: 0, y: 30 },
  ];
  expect(perimeter(bitten)).toBeCloseTo(10 + 5 * Math.PI + 30 + 20 + 30, 9);
});

test('a mirrored contour, run backward, is the same figure: its area and length are the same, and it turns left', () => {
  const odd = [
    { x: 0, y: 0 },
    { x: 40, y: 5, bulge: 0.3 },
    { x: 30, y: 30 },
    { x: 4, y: 22, bulge: -0.2 },
  ];
  const mirrored = reversed(odd.map((v) => ({ ...v, x: -v.x })));
  expect(areaOf(mirrored)).toBeCloseTo(areaOf(odd), 9);
  expect(perimeter(mirrored)).toBeCloseTo(perimeter(odd), 9);
});

test('the nearest place of a line is its foot, or the end beyond which the foot would lie', () => {
  const [a, b]: [Point, Point] = [
    [10, 0],
    [50, 30],
  ];
  // Against ten thousand places along it.
  for (const p of [
    [0, 0],
    [30, 40],
    [70, 10],
    [30, 15],
  ] as const) {
    let least = Infinity;
    for (let i = 0; i <= 10_000; i++) {
      const t = i / 10_000;
      least = Math.min(least, Math.hypot(10 + 40 * t - p[0], 30 * t - p[1]));
    }
    const [x, y] = nearestOn(a, b, p);
    expect(Math.hypot(x - p[0], y - p[1])).toBeLessThanOrEqual(least + 1e-9);
    expect(Math.hypot(x - p[0], y - p[1])).toBeGreaterThan(least - 0.01);
  }
  expect(nearestOn(a, a, [0, 7])).toEqual(a);
});

test('the span of a triangle at a place is what its two sides leave there, and nothing beside it', () => {
  const triangle: Point[] = [
    [0, 0],
    [40, 0],
    [10, 30],
  ];
  expect(spanAt(triangle, 5)).toEqual([0, 15]);
  expect(spanAt(triangle, 25)).toEqual([0, 15]);
  expect(spanAt(triangle, 0)).toEqual([0, 0]);
  expect(spanAt(triangle, 40.001)).toBeUndefined();
  // At an upright side: the whole of it.
  const upright: Point[] = [
    [0, 2],
    [9, 2],
    [9, 7],
    [0, 7],
  ];
  expect(spanAt(upright, 0)).toEqual([2, 7]);
  expect(spanAt(upright, 9)).toEqual([2, 7]);
});
