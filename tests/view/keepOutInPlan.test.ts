import { expect, test } from 'vitest';
import type { KeepOutSpec } from '../../src/job/job.js';
import { keepOutInPlan } from '../../src/view/keepOutInPlan.js';

const polygon = (points: readonly (readonly [number, number])[]): KeepOutSpec => ({
  kind: 'polygon',
  name: 'plug',
  points,
});
const near = (numbers: readonly number[]) => numbers.map((each) => expect.closeTo(each, 9));

// Centre of area of a triangle: the mean of its corners (Euclid); of an L, by its two rectangles (any statics text).
test('a keep-out is held at its centre of area, however many points its outline has', () => {
  const triangle = [
    [0, 0],
    [60, 0],
    [0, 30],
  ] as const;
  expect(keepOutInPlan(polygon(triangle)).middle).toEqual(near([20, 10]));
  const withMorePoints = [triangle[0], [10, 0], [20, 0], [30, 0], triangle[1], triangle[2]] as const;
  expect(keepOutInPlan(polygon(withMorePoints)).middle).toEqual(near([20, 10]));
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
  expect(keepOutInPlan(polygon(corner)).middle).toEqual(near([x, y]));
  expect(keepOutInPlan(polygon([...corner].reverse())).middle).toEqual(near([x, y]));
  // From there to the farthest corner along and across.
  expect(keepOutInPlan(polygon(corner)).halfSize).toEqual(near([40 - x, 40 - y]));
});

test('a box has its four corners around its middle, and reaches half its size', () => {
  const box: KeepOutSpec = { kind: 'rectangle', name: 'box', x: 100, y: -20, length: 60, width: 10 };
  const seen = keepOutInPlan(box);
  expect(seen).toMatchObject({ kind: 'outline', middle: [100, -20], halfSize: [30, 5] });
  const corners = seen.kind === 'outline' ? seen.corners.map(String) : [];
  expect(new Set(corners)).toEqual(new Set(['70,-25', '130,-25', '130,-15', '70,-15']));
});

test('a round one is its circle', () => {
  const disc: KeepOutSpec = { kind: 'disc', name: 'plug', x: 100, y: -20, radius: 16 };
  expect(keepOutInPlan(disc)).toEqual({ kind: 'disc', middle: [100, -20], halfSize: [16, 16], radius: 16 });
});
