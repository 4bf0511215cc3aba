import { expect, test } from 'vitest';
import { levelLines } from '../../../src/sheet/chart/levels.js';

test('a line reaches the drawing as it was computed, not rounded to three digits', () => {
  // d3-path rounds to three digits unless told otherwise (d3/d3-path#38).
  const [line] = levelLines(
    [{ from: 1 / 3, to: 2 / 3, value: 1 / 7 }],
    (at) => at * 100,
    (value) => value,
  );
  expect(line).toEqual([
    [(1 / 3) * 100, 1 / 7],
    [(2 / 3) * 100, 1 / 7],
  ]);
});

test('each level is a line of its own, and an unknown one is left out', () => {
  const same = (value: number) => value;
  const levels = [
    { from: 0, to: 1, value: 2 },
    { from: 2, to: 3, value: Infinity },
    { from: 4, to: 5, value: 6 },
  ];
  expect(levelLines(levels, same, same)).toEqual([
    [
      [0, 2],
      [1, 2],
    ],
    [
      [4, 6],
      [5, 6],
    ],
  ]);
});
