import { describe, expect, test } from 'vitest';
import type { Block } from '../../../src/block/block.js';
import { cutFinding } from '../../../src/block/cut/cutFinding.js';
import { sayFinding } from '../../../src/finding/say.js';
import { cuttingOf, type Cutting } from '../../../src/block/cut/cutting.js';
import type { ToCut } from '../../../src/block/glue/gluing.js';
import { sizesOf } from '../../../src/block/sizes.js';
import type { BlocksSpec, StockSpec } from '../../../src/job/spec/blocks.js';
import { roundedAs } from '../../../src/length/rounded.js';
import { planOf } from '../../../src/plan.js';
import { sampleJob, SAMPLES } from '../../samples.js';
import { layoutFaults } from '../layoutFaults.js';

const SHEETS: StockSpec[] = [
  { length: 1000, width: 500, thickness: 40, price: 10, offcut: false },
  { length: 600, width: 300, thickness: 25, count: 2, offcut: true },
];

describe.each(SAMPLES)('the blocks of %s', (name) => {
  const job = sampleJob(name);
  // One sample lists no sheets of its own.
  const stock = job.blocks.stock.length > 0 ? job.blocks.stock : SHEETS;
  const plan = planOf({ ...job, blocks: { ...job.blocks, stock } });
  const cutting = cuttingOf(plan);
  const { kerf, trim, keep } = plan.job.blocks;

  test('are sawn as the list of cuts says, edge to edge in three stages, and none is missing', () => {
    expect(layoutFaults(cutting.sheets!, cutting.parts, { kerf, trim, keep })).toEqual([]);
    expect(cutting.sheets!.leftOut).toEqual([]);
  });

  test('come out of their blanks, layers and all', () => {
    for (const { block, sawn, making, parts } of cutting.cuts) {
      expect(parts).toHaveLength(making!.layers);
      // A sheet may be half a millimetre short of the thickness that the papers say.
      const said = roundedAs('block', block.made.thickness, job.units);
      expect(making!.layers * making!.sheet).toBeGreaterThanOrEqual(said - 0.5);
      for (const id of parts) {
        const part = cutting.parts.find((each) => each.id === id)!;
        expect(part.length).toBeGreaterThanOrEqual(sawn.length - 1e-6);
        expect(part.height).toBeGreaterThanOrEqual(sawn.height - 1e-6);
      }
    }
  });

  test('are glued in once each, in batches that the open time allows', () => {
    const { batches } = cutting.glue;
    expect(batches.flatMap(({ blocks }) => blocks).sort()).toEqual(plan.blocks.map(({ id }) => id).sort());
    for (const { minutes } of batches) expect(minutes).toBeLessThanOrEqual(plan.job.blocks.glue.openTime);
  });

  test('are cut the same way when they are planned again', () => {
    expect(cuttingOf(plan)).toEqual(cutting);
  });

  test('are each of one size in the list of sizes', () => {
    expect(
      sizesOf(plan.blocks, plan.job.units)
        .flatMap(({ blocks }) => blocks)
        .sort(),
    ).toEqual(plan.blocks.map(({ id }) => id).sort());
  });
});

test('blocks of one guide have one blank', () => {
  const job = sampleJob('fell-short');
  const plan = planOf({
    ...job,
    routing: { ...job.routing, guides: { kind: 'count', count: 3 } },
    blocks: { ...job.blocks, stock: SHEETS },
  });
  const { cuts, parts } = cuttingOf(plan, { rounds: 50 });
  const blanks = new Map<string, Set<string>>();
  for (const { block, parts: ids } of cuts) {
    if (!block.guide) continue;
    const { length, height } = parts.find(({ id }) => id === ids[0])!;
    blanks.set(block.guide, (blanks.get(block.guide) ?? new Set()).add(`${length.toFixed(1)} × ${height.toFixed(1)}`));
  }
  expect(blanks.size).toBe(3);
  for (const [guide, sizes] of blanks) expect([guide, sizes.size]).toEqual([guide, 1]);
});

describe('what cannot be cut is said by number, and the rest is planned', () => {
  const BLOCKS: BlocksSpec = {
    fit: 0,
    corners: 'square',
    stock: [{ length: 400, width: 200, thickness: 40, offcut: false }],
    kerf: 3,
    trim: 5,
    grain: false,
    keep: { length: 100, width: 50 },
    glue: { openTime: 20, minutesPerBlock: 3, spread: 60, loss: 0, clampSpacing: 250 },
  };
  const box = (id: string, length: number, height: number, thickness = 40): Block => {
    const outline = [
      { x: 0, y: 0 },
      { x: length, y: 0 },
      { x: length, y: height },
      { x: 0, y: height },
    ];
    const made = { outline, length, height, thickness, volume: (length * height * thickness) / 1e6, weight: 0.01 };
    return { id, row: 'R1', ...made, made };
  };
  const cut = (blocks: readonly Block[], more: Partial<BlocksSpec> = {}): Cutting =>
    cuttingOf({
      job: {
        units: 'mm',
        fill: { name: 'light foam', density: 12, source: 'invented' },
        blocks: { ...BLOCKS, ...more },
      },
      // Only what gluing asks of a row and of a chamber is here.
      layup: { rows: [{ id: 'R1', end: 'rail' }] } as unknown as ToCut['layup'],
      chambers: blocks.map(({ id }) => ({ id, profile: [], depth: [0, 40] })) as unknown as ToCut['chambers'],
      blocks,
    });
  const said = ({ sheets }: Cutting) => sheets!.faults.map((fault) => sayFinding(cutFinding(fault, 'mm')));
  const small = box('R1-01', 100, 50);

  test('a block larger than any sheet, with the sheet that would do', () => {
    const cutting = cut([small, box('R1-02', 500, 60)]);
    expect(said(cutting)).toEqual([
      'Block R1-02: larger than any sheet of light foam, 40 mm thick → a sheet of at least 510 mm × 70 mm, trimming included, either way round',
    ]);
    expect(cutting.sheets!.leftOut).toEqual(['R1-02']);
    expect(cutting.sheets!.sheets).toHaveLength(1);
  });

  test('a saw cut wider than a block', () => {
    expect(said(cut([small, box('R1-03', 90, 2.5)]))).toEqual([
      'Block R1-03: its short side of 2.5 mm is no wider than the saw cut of 3 mm → a blade or wire that cuts narrower than 2.5 mm',
    ]);
  });

  test('no sheets at all: nothing is cut, and the batches are planned still', () => {
    const cutting = cut([small], { stock: [] });
    expect(cutting.sheets).toBeUndefined();
    expect(cutting.cuts.map(({ making }) => making)).toEqual([undefined]);
    expect(cutting.glue.batches).toHaveLength(1);
  });

  test('sheets that are used up: another thickness serves', () => {
    const stock = [
      { length: 120, width: 70, thickness: 40, count: 1, offcut: true },
      { length: 400, width: 200, thickness: 50, offcut: false },
    ];
    const cutting = cut([small, box('R1-02', 100, 50)], { stock });
    expect(cutting.sheets!.leftOut).toEqual([]);
    expect(said(cutting)).toEqual([]);
    expect(cutting.cuts.map(({ making }) => making!.sheet).sort()).toEqual([40, 50]);
  });

  test('a block glued up from layers has each of them on a sheet', () => {
    const { parts, sheets } = cut([box('R1-04', 100, 50, 75)]);
    expect(parts.map(({ id }) => id)).toEqual(['R1-04/1', 'R1-04/2']);
    expect(sheets!.sheets.flatMap(({ blanks }) => blanks.flatMap((blank) => blank.parts.map(({ id }) => id)))).toEqual([
      'R1-04/1',
      'R1-04/2',
    ]);
  });

  // By hand: around 2 (100 + 50) × 40 = 12,000 mm², the floor behind it 100 × 50 = 5,000 mm²: 0.017 m² × 60 g/m² = 1.02
  // g.
  test('glue goes around the block and to the floor behind it', () => {
    expect(cut([small]).glue.glue).toBeCloseTo(1.02, 9);
  });
});
