import { expect, test } from 'vitest';
import type { KeepOutSpec } from '../../src/job/job.js';
import { keepOutCorners, keepOutMiddle } from '../../src/view/keepOutInPlan.js';

// Centre of area of a triangle: the mean of its corners (Euclid); of an L, by its two rectangles (any statics text).
test('a keep-out is held at its centre of area, however many points its outline has', () => {
  const outline = (points: readonly (readonly [number, number])[]): KeepOutSpec =>
    ({ kind: 'polygon', name: 'plug', points }) as KeepOutSpec;
  const triangle = [
    [0, 0],
    [60, 0],
    [0, 30],
  ] as const;
  expect(keepOutMiddle(outline(triangle))).toEqual([20, 10].map((v) => expect.closeTo(v, 9)));
  const withMorePoints = [triangle[0], [10, 0], [20, 0], [30, 0], triangle[1], triangle[2]] as const;
  expect(keepOutMiddle(outline(withMorePoints))).toEqual([20, 10].map((v) => expect.closeTo(v, 9)));
  const corner = [
    [0, 0],
    [40, 0],
    [40, 10],
    [10, 10],
    [10, 40],
    [0, 40],
  ] as const;
  // 40 × 10 at (20, 5), 10 × 30 at (5, 25).
  const [x, y] = [(400 * 20 + 300 * 5) / 700, (400 * 5 + 300 * 25) / 700];
  expect(keepOutMiddle(outline(corner))).toEqual([x, y].map((v) => expect.closeTo(v, 9)));
  expect(keepOutMiddle(outline([...corner].reverse()))).toEqual([x, y].map((v) => expect.closeTo(v, 9)));
});

test('a box has its four corners around its middle', () => {
  const box: KeepOutSpec = { kind: 'box', name: 'box', x: 100, y: -20, length: 60, width: 10 } as never;
  expect(keepOutMiddle(box)).toEqual([100, -20]);
  expect(new Set(keepOutCorners(box as never).map(String))).toEqual(
    new Set(['70,-25', '130,-25', '130,-15', '70,-15']),
  );
});
