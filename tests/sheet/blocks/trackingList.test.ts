import Papa from 'papaparse';
import { describe, expect, test } from 'vitest';
import { sawnSizeOf } from '../../../src/block/blankSize.js';
import { csvOf } from '../../../src/print/csv.js';
import { trackingList, trackingRows } from '../../../src/sheet/blocks/trackingList.js';
import { STEPS } from '../../../src/shop/log/step.js';
import { printLength } from '../../../src/length/length.js';
import { planOfSample, SAMPLES } from '../sample.js';

describe.each(SAMPLES)('the tracking list of %s', (name) => {
  const plan = planOfSample(name);

  test('names every block once, row by row, with a box for each step of the shop', () => {
    const list = trackingList(plan);
    const ids = list.rows.flatMap((row) => (row.kind === 'row' ? [row.cells[0]] : []));
    expect(ids).toEqual(plan.blocks.map(({ id }) => id));
    expect(list.columns.filter(({ kind }) => kind === 'tick').map(({ title }) => title)).toEqual([...STEPS]);
  });

  test('ticks what was done and nothing else', () => {
    const [first] = plan.blocks;
    const list = trackingList(plan, ({ id }) => (id === first!.id ? [true, true] : []));
    const ticked = list.rows.flatMap((row) => (row.kind === 'row' ? [row.cells.filter((cell) => cell === true)] : []));
    expect(ticked.map((cells) => cells.length)).toEqual(plan.blocks.map(({ id }) => (id === first!.id ? 2 : 0)));
  });

  test('weighs what its blocks weigh together, and names the batch of each', () => {
    const list = trackingList(plan);
    const rows = list.rows.flatMap((row) => (row.kind === 'row' ? [row.cells] : []));
    const weight = list.columns.findIndex(({ title }) => title === 'Weight');
    const sum = rows.reduce((total, cells) => total + (cells[weight] as { value: number }).value, 0);
    // By hand: litres times density.
    const litres = plan.blocks.reduce((total, { made }) => total + made.volume, 0);
    expect(sum).toBeCloseTo((litres / 1000) * plan.job.fill.density, 9);
    expect(list.columns[weight]!.total!(sum)).toMatch(/^[\d.]+ (kg|g|lb|oz)$/);
    for (const cells of rows) expect(cells[weight + 1]).toMatch(/^\d+$/);
  });

  test('opens in a spreadsheet with the same rows', () => {
    // Papa Parse reads it back: an independent reader of RFC 4180.
    const { data, errors } = Papa.parse<string[]>(csvOf(trackingRows(plan)).trim());
    expect(errors).toEqual([]);
    expect(data).toHaveLength(plan.blocks.length + 1);
    data.slice(1).forEach((cells, i) => {
      const block = plan.blocks[i]!;
      expect(cells[0]).toBe(block.id);
      const size = Number(cells[2]);
      expect(size).toBe(sawnSizeOf(block, plan.job.units).length);
      expect(printLength(size, plan.job.units)).toBe(cells[5]);
    });
  });
});
