import { expect, it } from 'vitest';
import { labelStocks } from '../../../src/print/paper/labelStock.js';
import { sheetNamed } from '../../../src/print/paper/paper.js';
import { labels } from '../../../src/sheet/blocks/labels.js';
import { planOfSample } from '../../sheet/sample.js';
import { printed } from '../printed.js';
import { readPdf } from '../readPdf.js';

it('every label lies on its sheet, and none on another', () => {
  for (const stock of labelStocks) {
    const sheet = sheetNamed(stock.sheet)!;
    expect(stock.left + (stock.columns - 1) * stock.columnPitch + stock.width).toBeLessThanOrEqual(sheet.width + 0.01);
    expect(stock.top + (stock.rows - 1) * stock.rowPitch + stock.height).toBeLessThanOrEqual(sheet.height + 0.01);
    expect(stock.columnPitch).toBeGreaterThanOrEqual(stock.width);
    expect(stock.rowPitch).toBeGreaterThanOrEqual(stock.height);
  }
});

it.each(labelStocks)('numbers stand on their labels, row by row, on $name', async (stock) => {
  const perSheet = stock.columns * stock.rows;
  const labels = Array.from({ length: perSheet + 1 }, (_, i) => ({
    number: `R${String(i)}`,
    lines: ['240 × 80 × 60 mm'],
  }));
  const pages = await readPdf((await printed([{ kind: 'labels', title: 'Labels', stock, labels }])).bytes);
  expect(pages).toHaveLength(2);
  for (let i = 0; i < perSheet; i++) {
    const { x, y } = pages[0]!.texts.find(({ text }) => text === `R${String(i)}`)!;
    const left = stock.left + (i % stock.columns) * stock.columnPitch;
    const top = pages[0]!.height - stock.top - Math.floor(i / stock.columns) * stock.rowPitch;
    expect(x).toBeGreaterThan(left);
    expect(x).toBeLessThan(left + stock.width / 2);
    expect(y).toBeLessThan(top);
    expect(y).toBeGreaterThan(top - stock.height / 2);
  }
});

it('nothing stands where the printer does not print, and labels that a margin leaves no room on are refused', async () => {
  const fit = labelStocks[0]!;
  const plan = planOfSample('tarn-rescue');
  for (const stock of labelStocks) {
    for (const { texts, fills, lines, width, height } of await readPdf(
      (await printed([labels(plan, stock)])).bytes,
      [1],
    )) {
      // Cut lines may be lost at the edge: they say where to cut, not what.
      const drawn = [...fills.flat(), ...lines.filter(({ dashed }) => !dashed).flatMap(({ points }) => points)];
      for (const { x, y } of [...drawn, ...texts]) {
        expect(Math.min(x, y, width - x, height - y)).toBeGreaterThanOrEqual(5 - 0.01);
      }
    }
  }
  const { findings } = await printed([labels(plan, fit)], { settings: { margin: 20, overlap: 10 } });
  expect(findings.map(({ where }) => where)).toEqual(['labels']);
});
