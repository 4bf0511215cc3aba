import { expect, test } from 'vitest';
import { labelStocks } from '../../src/print/labelStock.js';
import { labels } from '../../src/sheet/labels.js';
import { planOfSample } from './sample.js';

const plan = planOfSample('fell-short');
const page = labels(plan, labelStocks[0]!);

test('every block has a label with its number, its size and its place in the row', () => {
  expect(page.labels.map(({ number }) => number)).toEqual(plan.blocks.map(({ id }) => id));
  for (const { number, drawing } of page.labels) {
    const row = plan.blocks.find(({ id }) => id === number)!.row;
    const shapes = drawing!.shapes.filter((shape) => shape.kind === 'path');
    expect(shapes).toHaveLength(plan.chambers.filter((chamber) => chamber.row === row).length);
    expect(shapes.filter(({ hatch }) => hatch !== undefined)).toHaveLength(1);
  }
});

test('the code is a square one with the three finder patterns of ISO/IEC 18004 (from memory: 7 × 7, ring in ring)', () => {
  for (const { code } of page.labels) {
    const size = code!.length;
    expect((size - 21) % 4).toBe(0);
    for (const row of code!) expect(row).toHaveLength(size);
    for (const [top, left] of [
      [0, 0],
      [0, size - 7],
      [size - 7, 0],
    ]) {
      for (let r = 0; r < 7; r++) {
        for (let c = 0; c < 7; c++) {
          const ring = Math.max(Math.abs(r - 3), Math.abs(c - 3));
          expect(code![top! + r]![left! + c]).toBe(ring !== 2);
        }
      }
    }
  }
});
