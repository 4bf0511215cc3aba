import { easeCorners } from '../../src/contour/ease.js';
import { expect, test } from 'vitest';
import {
  areaOutside,
  beyondCutter,
  flattened,
  lineToPolygon,
  liesInside,
  liesWithin,
  polygonsApart,
  roundingOf,
  sharedArea,
  squaredOut,
  type Pair,
} from '../../src/proof/plane.js';
import { rollsAround } from '../../src/proof/rolls.js';

const rectangle = (length: number, height: number, at: Pair = [0, 0]): Pair[] => [
  at,
  [at[0] + length, at[1]],
  [at[0] + length, at[1] + height],
  [at[0], at[1] + height],
];
const rounded = (length: number, height: number, radius: number) => easeCorners(rectangle(length, height), radius)!;
const areaOf = (polygon: readonly Pair[]) =>
  polygon.reduce((sum, [u, v], i) => {
    const [u1, v1] = polygon[(i + 1) % polygon.length]!;
    return sum + (u * v1 - u1 * v) / 2;
  }, 0);

// Plane geometry, exact: a rounded rectangle l × w, corner r, holds l w − (4 − π) r².
test('arcs are flattened to within five thousandths of a millimetre: 200 × 60 with corners of 10 holds 11914.16 mm²', () => {
  const area = areaOf(flattened(rounded(200, 60, 10).contour));
  expect(area).toBeLessThan(11914.1593);
  expect(area).toBeGreaterThan(11914.1593 - 0.005 * 2 * Math.PI * 10);
});

test('a contour with its arcs drawn out is the rectangle it was eased from', () => {
  const corners = squaredOut(rounded(200, 60, 10).contour);
  expect(Math.abs(areaOf(corners) - 200 * 60)).toBeLessThan(1e-9);
});

// The corners a disc of radius r leaves of a square pocket hold (4 − π) r² (closed form).
test.each([3, 6.35, 10])('a cutter of radius %d leaves (4 − π) r² in the corners of a square pocket', (radius) => {
  const pocket = rectangle(200, 60);
  expect(Math.abs(beyondCutter(pocket, radius, 0) - (4 - Math.PI) * radius ** 2)).toBeLessThan(roundingOf(pocket));
  expect(
    rollsAround(
      pocket.map(([x, y]) => ({ x, y })),
      radius,
      0.06,
    ),
  ).toBe(false);
});

test.each([
  ['a pocket eased to the cutter', rounded(200, 60, 6.35).contour, true],
  ['one eased to a larger cutter', rounded(200, 60, 12).contour, true],
  ['one eased to a smaller cutter', rounded(200, 60, 6).contour, false],
  ['a slot a twentieth wider than the cutter', rounded(200, 12.75, 6.37).contour, true],
  ['a slot a millimetre narrower', rounded(200, 11.7, 5.8).contour, false],
])('%s: a cutter of 6.35 rolls around it: %#', (_, contour, rolls) => {
  expect(rollsAround(contour, 6.35, 0.06)).toBe(rolls);
  const pocket = flattened(contour);
  expect(beyondCutter(pocket, 6.35, 0.06) <= roundingOf(pocket)).toBe(rolls);
});

test('a pocket that narrows to a neck is not rolled through, although its corners are wide', () => {
  // An hourglass: 100 long, 40 high at its ends, 8 high in its middle.
  const corners: Pair[] = [
    [0, -20],
    [50, -4],
    [100, -20],
    [100, 20],
    [50, 4],
    [0, 20],
  ];
  const { contour } = easeCorners(corners, 6.35)!;
  expect(rollsAround(contour, 6.35, 0.06)).toBe(false);
  expect(beyondCutter(flattened(contour), 6.35, 0.06)).toBeGreaterThan(10);
});

// Worked by hand.
test('distances of lines and polygons are those of a ruler', () => {
  const box = rectangle(10, 4);
  expect(lineToPolygon([-3, 2], [-3, 2], box)).toBe(3);
  expect(lineToPolygon([5, 2], [5, 2], box)).toBe(-2);
  expect(lineToPolygon([-1, 2], [3, 2], box)).toBe(0);
  expect(lineToPolygon([3, 1.5], [6, 3], box)).toBe(-1);
  expect(lineToPolygon([13, 8], [20, 8], box)).toBe(5);
  expect(polygonsApart(box, rectangle(3, 3, [13, 8]))).toBe(5);
  expect(polygonsApart(box, rectangle(3, 3, [9, 3]))).toBe(0);
  expect(liesWithin([9.99, 3.99], box)).toBe(true);
  expect(liesWithin([10.01, 3.99], box)).toBe(false);
  expect(sharedArea(box, rectangle(3, 3, [9, 3]))).toBeCloseTo(1, 6);
  expect(areaOutside(rectangle(3, 3, [9, 3]), box, 0)).toBeCloseTo(8, 6);
  expect(areaOutside(rectangle(3, 3, [9, 3]), box, 2)).toBeCloseTo(0, 6);
  expect(liesInside(rectangle(8, 2, [1, 1]), box, 1)).toBe(true);
  expect(liesInside(rectangle(8, 2, [1, 1]), box, 1.01)).toBe(false);
  expect(liesInside(rectangle(8, 2, [20, 1]), box, 1)).toBe(false);
});
