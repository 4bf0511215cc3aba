import { expect, test } from 'vitest';
import { bandOutline } from '../../../src/sheet/chart/band.js';
import { lineThrough } from '../../../src/sheet/chart/line.js';
import { symbolAt } from '../../../src/sheet/chart/symbol.js';

test('a ring reaches as far as asked, about its place', () => {
  expect(symbolAt('ring', 'outline', [30, 40], 1.2)).toEqual([
    { kind: 'circle', layer: 'outline', x: 30, y: 40, radius: expect.closeTo(1.2, 9) as number },
  ]);
});

test('a cross is two strokes from corner to corner of the square that it reaches to', () => {
  const strokes = symbolAt('cross', 'mark', [30, 40], 2).map((shape) => {
    if (shape.kind !== 'path') throw new Error('a stroke is a path');
    return shape.vertices.map(({ x, y }) => [Math.round(x), Math.round(y)]);
  });
  expect(strokes).toEqual([
    [
      [28, 38],
      [32, 42],
    ],
    [
      [28, 42],
      [32, 38],
    ],
  ]);
});

test('a band is the rectangle of its stretch and its values, and a line goes through just the points given', () => {
  const corners = bandOutline(1 / 3, 5, 2, 7);
  expect(new Set(corners.map(String))).toEqual(new Set([`${1 / 3},2`, `${1 / 3},7`, '5,2', '5,7']));
  const points = [
    [0, 1 / 7],
    [1, 5],
  ] as const;
  expect(lineThrough(points)).toEqual(points);
  expect(lineThrough([])).toEqual([]);
});
