import { expect, test } from 'vitest';
import { overlaps } from '../../../src/print/trace/box.js';
import { inkOf } from '../../../src/print/tile/ink.js';
import type { Written } from '../../../src/print/tile/runWords.js';
import type { Seam } from '../../../src/print/tile/seam.js';
import { seamWordsOn } from '../../../src/print/tile/seamWords.js';
import { traceOf } from '../../../src/print/trace/trace.js';
import type { Shape } from '../../../src/sheet/drawing.js';
import { line, text } from '../../../src/sheet/primitives.js';

const seam: Seam = {
  letters: 'AA',
  way: 'upright',
  under: 0,
  over: 1,
  at: 100,
  from: 0,
  to: 150,
  marks: [
    { along: 20, rising: true },
    { along: 130, rising: false },
  ],
};

function written(...shapes: Shape[]): Written[] {
  const drawing = { id: 'sheet', title: 'Sheet', notes: [], shapes };
  const trace = traceOf(drawing);
  return [{ drawing, trace, ink: inkOf(trace), up: 0, isOn: () => true }];
}

test('a seam has its letters on both sides at each of its two marks, and a diagonal through each', () => {
  const [words] = seamWordsOn([seam], written(line('outline', [0, 75], [200, 75])));
  expect(words!.diagonals).toHaveLength(2);
  expect(words!.letters.map(({ x }) => x)).toEqual([95, 95, 105, 105]);
});

test('a mark on which words stand is left out, and the other one stays', () => {
  const [words] = seamWordsOn([seam], written(text('L2-07', [85, 20], 7)));
  expect(words!.diagonals).toEqual([[91, 139, 109, 121]]);
  expect(words!.letters.every(({ y }) => y > 100)).toBe(true);
});

test('letters that lines run through at both marks stand elsewhere along the seam, on no line', () => {
  const lines = [16, 24, 126, 134].map((y) => line('chamber', [0, y], [200, y]));
  const [words] = seamWordsOn([seam], written(...lines));
  expect(words!.letters.map(({ x }) => x)).toEqual([95, 105]);
  for (const { box } of words!.letters) {
    for (const y of [16, 24, 126, 134]) expect(overlaps(box, { minX: 0, maxX: 200, minY: y, maxY: y })).toBe(false);
  }
});
