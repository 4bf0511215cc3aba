import { expect, test } from 'vitest';
import { sawnSizeOf } from '../../../src/block/blankSize.js';
import { labelStockFor, labelStocks } from '../../../src/print/paper/labelStock.js';
import { rollOf, sheetNamed } from '../../../src/print/paper/paper.js';
import { cuttingOnce } from '../../../src/sheet/cutting/cuttingOnce.js';
import { makingTable } from '../../../src/sheet/cutting/cutTables.js';
import { labels } from '../../../src/sheet/blocks/labels.js';
import { trackingList } from '../../../src/sheet/blocks/trackingList.js';
import { planOfSample, SAMPLES } from '../sample.js';

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

test('what a label says is what the saw is set to, and the same as the tracking list says', () => {
  for (const name of SAMPLES) {
    const its = planOfSample(name);
    const list = trackingList(its);
    const written = new Map(
      list.rows.flatMap((row) =>
        row.kind === 'row'
          ? [[row.cells[0], row.cells.slice(1, 4).map((cell) => (cell as { text: string }).text)]]
          : [],
      ),
    );
    const cuts = new Map(cuttingOnce(its).cuts.map((cut) => [cut.block.id, cut]));
    const making = makingTable(its, cuttingOnce(its));
    const blank = making.columns.findIndex(({ title }) => title === 'blank');
    for (const { number, lines } of labels(its, labelStocks[0]!).labels) {
      const [length, height, thick] = written.get(number)!;
      const oneUnit = length.replace(/ (mm|in)$/, '');
      expect(lines[0]!.replaceAll('\u00a0', ' ')).toBe(`saw ${oneUnit} × ${height}, thick ${thick}`);
      // What is planed off once it is glued in is said where something stands proud, as the list says it.
      const off = making.columns.findIndex(({ title }) => title === 'plane off');
      const listed = off < 0 ? '' : making.rows.find((each) => each.kind === 'row' && each.cells[0] === number);
      const proud = listed && listed.kind === 'row' ? String(listed.cells[off]) : '';
      expect(lines.slice(2).map((line) => line.replaceAll('\u00a0', ' '))).toEqual(
        proud === '' ? [] : [`plane ${proud}`],
      );
      const row = making.rows.find((each) => each.kind === 'row' && each.cells[0] === number);
      expect(row?.kind === 'row' && row.cells[blank]).toBe(`${length} × ${height}`);
      // Not the box around the block as it lies tilted in its face: what the saw is set to, to a step of the rule.
      const { sawn, block } = cuts.get(number)!;
      const size = sawnSizeOf(block, its.job.units);
      expect(Math.abs(size.length - sawn.length)).toBeLessThan(25.4 / 16 + 1e-4);
      expect(Math.abs(size.height - sawn.height)).toBeLessThan(25.4 / 16 + 1e-4);
      if (!sawn.sides) expect(size.height).toBeGreaterThanOrEqual(sawn.height - 1e-4);
    }
  }
});

test('a label names nose and deck as the block lies before the one who looks at the face', () => {
  for (const name of SAMPLES) {
    const its = planOfSample(name);
    for (const { number, ends, drawing } of labels(its, labelStocks[0]!).labels) {
      const row = its.layup.rows.find(({ id }) => number.startsWith(`${id}-`))!;
      // Seen from the left of a piece, looking to the right, the nose is on the left.
      expect(ends).toEqual(row.face.inward[1] > 0 ? ['← NOSE', '↑ DECK'] : ['↑ DECK', 'NOSE →']);
      const boxes = drawing!.shapes.flatMap((shape) => (shape.kind === 'path' ? [shape] : []));
      const order = its.chambers.filter((chamber) => chamber.row === row.id).map(({ id }) => id);
      const place = order.indexOf(number);
      const from = row.face.inward[1] > 0 ? place : order.length - 1 - place;
      expect(boxes.findIndex(({ hatch }) => hatch === 'dark')).toBe(from);
    }
  }
});

test('the labels follow the paper', () => {
  const stockOn = (name: string) => labelStockFor(sheetNamed(name)!).sheet;
  expect(['A4', 'A1', 'Letter', 'Legal', 'ANSI B', 'Arch D'].map(stockOn)).toEqual([
    'A4',
    'A4',
    'Letter',
    'Letter',
    'Letter',
    'Letter',
  ]);
  expect(labelStockFor(rollOf(610)).sheet).toBe('A4');
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
