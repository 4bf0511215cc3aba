import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { cutSheets } from '../../../src/block/cut/cutSheets.js';
import type { CutProgress } from '../../../src/block/cut/foamPlan.js';
import { cutFinding } from '../../../src/block/cut/cutFinding.js';
import { sayFinding } from '../../../src/finding/say.js';
import type { CutPart, CutStock, SawSetting } from '../../../src/block/nest/cutPart.js';
import { fenceSettings } from '../../../src/block/cut/fenceSettings.js';
import { layoutFaults } from '../layoutFaults.js';
import { evenly } from '../../evenly.js';

const saw: SawSetting = { kerf: 3, trim: 5, keep: { length: 200, width: 60 } };
const sheet: CutStock = { id: 'full', foam: 'fill 50', length: 1200, width: 600, price: 20 };

function block(id: string, length: number, height: number, more: Partial<CutPart> = {}): CutPart {
  return { id, foam: 'fill 50', length, height, mayTurn: false, ...more };
}

function likeABoard(count: number): CutPart[] {
  return Array.from({ length: count }, (_, i) =>
    block(`R${1 + (i % 4)}-${i}`, 140 + 7 * ((i * 37) % 20), 38 + ((i * 13) % 40), { mayTurn: i % 3 > 0 }),
  );
}

describe('every layout can be sawn as it is written', () => {
  const anyPart = fc.record({
    length: evenly(5, 500),
    height: evenly(5, 200),
    mayTurn: fc.boolean(),
    foam: fc.constantFrom('fill 50', 'fill 40'),
    taper: fc.option(
      fc.record({
        top: evenly(-0.4, 0.4),
        bottom: evenly(-0.4, 0.4),
      }),
      { nil: undefined },
    ),
  });
  const anyStock = fc.array(
    fc.record({
      foam: fc.constantFrom('fill 50', 'fill 40'),
      length: evenly(100, 1500),
      width: evenly(50, 800),
      count: fc.option(fc.integer({ min: 0, max: 4 }), { nil: undefined }),
      price: fc.option(evenly(0, 50), { nil: undefined }),
      offcut: fc.boolean(),
    }),
    { minLength: 1, maxLength: 4 },
  );
  const anySaw = fc.record({
    kerf: fc.constantFrom(0, 0.8, 3, 4),
    trim: fc.constantFrom(0, 2, 10),
    keep: fc.record({ length: fc.constantFrom(0, 50, 300), width: fc.constantFrom(0, 50, 100) }),
  });

  test('random jobs: no overlap, the saw cut kept, edge to edge in three stages, every block once', () => {
    fc.assert(
      fc.property(fc.array(anyPart, { maxLength: 30 }), anyStock, anySaw, (rough, stocks, anySawSetting) => {
        const parts = rough.map(({ taper, ...part }, i): CutPart => {
          const scaled = taper && { top: taper.top * part.height, bottom: taper.bottom * part.height };
          return { id: `B${i}`, ...part, ...(scaled && { taper: scaled }) };
        });
        const stock = stocks.map(({ count, price, ...size }, i): CutStock => {
          return { id: `S${i}`, ...size, ...(count !== undefined && { count }), ...(price !== undefined && { price }) };
        });
        const plan = cutSheets(parts, stock, anySawSetting, { rounds: 300 });
        expect(layoutFaults(plan, parts, anySawSetting)).toEqual([]);
        for (const id of plan.leftOut)
          expect(plan.faults.some((fault) => 'part' in fault && fault.part === id)).toBe(true);
        for (const { id, count } of stock) {
          expect(plan.sheets.filter((used) => used.stock === id).length).toBeLessThanOrEqual(count ?? Infinity);
        }
      }),
      { numRuns: 200, seed: 20240611 },
    );
  });

  test('a board of 120 blocks', () => {
    const parts = likeABoard(120);
    const plan = cutSheets(parts, [sheet], saw, { rounds: 3000 });
    expect(layoutFaults(plan, parts, saw)).toEqual([]);
    expect(plan.faults).toEqual([]);
    expect(plan.sums.price).toBe(20 * plan.sheets.length);
  });
});

describe('sums that can be done by hand', () => {
  // Three blocks of 100 and two saw cuts of 3 are 306: the cut behind the last block falls off the sheet.
  test('the saw cut behind the last block is not charged', () => {
    const parts = ['a', 'b', 'c'].map((id) => block(id, 100, 40));
    const tight = { ...sheet, length: 306, width: 40 };
    const plan = cutSheets(parts, [tight], { ...saw, trim: 0 });
    expect(plan.sheets).toHaveLength(1);
    expect(plan.sheets[0]!.cuts.map(({ fence, stage }) => [fence, stage])).toEqual([
      [100, 1],
      [100, 1],
    ]);
    expect(plan.sums.wasteArea).toBeCloseTo(2 * 3 * 40, 9);
    const tooShort = cutSheets(parts, [{ ...tight, length: 305 }], { ...saw, trim: 0 });
    expect(tooShort.sheets).toHaveLength(2);
  });

  // 6 × (100 × 50) from 306 × 103: two rips' worth of strips, then two cross-cuts in each.
  test('cuts come in the order of work, rips before cross-cuts, one fence setting for what is equal', () => {
    const parts = Array.from({ length: 6 }, (_, i) => block(`${i}`, 100, 50));
    const plan = cutSheets(parts, [{ ...sheet, length: 316, width: 113 }], saw);
    expect(layoutFaults(plan, parts, saw)).toEqual([]);
    expect(plan.sheets[0]!.cuts.filter(({ stage }) => stage === 0)).toHaveLength(4);
    const settings = fenceSettings(plan.sheets).filter(({ stage }) => stage > 0);
    expect(settings.map(({ stage, run, fence, cuts }) => [stage, run, fence, cuts.length])).toEqual([
      [1, 'along', 50, 1],
      [2, 'across', 100, 4],
    ]);
  });

  test('an offcut goes before a new sheet, and the smallest that serves before a larger one', () => {
    const stock: CutStock[] = [
      sheet,
      { id: 'large rest', foam: 'fill 50', length: 900, width: 500, count: 1, offcut: true },
      { id: 'small rest', foam: 'fill 50', length: 400, width: 120, count: 1, offcut: true },
    ];
    const plan = cutSheets([block('a', 300, 80)], stock, saw);
    expect(plan.sheets.map(({ stock: id }) => id)).toEqual(['small rest']);
    expect(plan.sums.price).toBe(0);
  });

  // Two 600 × 600 at 11 or one 1200 × 600 at 20: one large one is cheaper; at 9 each two small ones are.
  test.each([
    [11, ['full']],
    [9, ['half', 'half']],
  ])('the cheaper sheets are taken, small ones at %d', (price, ids) => {
    const stock = [sheet, { ...sheet, id: 'half', length: 600, price }];
    const parts = Array.from({ length: 8 }, (_, i) => block(`${i}`, 290, 290, { mayTurn: true }));
    expect(cutSheets(parts, stock, saw).sheets.map(({ stock: id }) => id)).toEqual(ids);
  });

  test('a sheet is ripped first where that takes no more sheets', () => {
    const { sheets } = cutSheets(likeABoard(50), [sheet], saw);
    for (const { cuts } of sheets) expect(cuts.find(({ stage }) => stage === 1)?.run).toBe('along');
  });

  test('a block with grain is never turned, one without is where that saves a sheet', () => {
    const stock = [{ ...sheet, length: 120, width: 310 }];
    expect(cutSheets([block('a', 300, 100, { mayTurn: true })], stock, saw).leftOut).toEqual([]);
    expect(cutSheets([block('a', 300, 100)], stock, saw).faults[0]).toMatchObject({
      kind: 'too-large',
      mayTurn: false,
    });
  });

  test('each foam comes from its own sheets', () => {
    const parts = [block('a', 300, 100), block('b', 300, 100, { foam: 'fill 40' })];
    const plan = cutSheets(parts, [sheet, { ...sheet, id: 'thin', foam: 'fill 40' }], saw);
    expect(plan.sheets.map(({ stock, blanks }) => [stock, blanks[0]!.parts[0]!.id])).toEqual([
      ['full', 'a'],
      ['thin', 'b'],
    ]);
  });

  test('a rest is kept from the stated size on, whichever way round', () => {
    const parts = [block('a', 300, 535)];
    const rests = (keep: SawSetting['keep']) => cutSheets(parts, [sheet], { ...saw, keep }).sheets[0]!.offcuts;
    const [largest] = rests({ length: 200, width: 60 });
    expect(largest).toMatchObject({ x: 308, y: 5, length: 1200 - 10 - 303, width: 590 });
    expect(rests({ length: 100, width: 590 })).toHaveLength(1);
    expect(rests({ length: 890, width: 890 })).toHaveLength(0);
  });
});

describe('bad input is named with what would do, and the rest is planned', () => {
  const good = block('R1-01', 300, 80);

  test.each<[string, CutPart, string]>([
    [
      'larger than any sheet',
      block('R1-02', 1195, 80),
      'Block R1-02: larger than any sheet of fill 50 → a sheet of at least 1205 mm × 90 mm, trimming included, with its length along the grain',
    ],
    [
      'thinner than the saw cut',
      block('R1-03', 300, 2.5),
      'Block R1-03: its short side of 2.5 mm is no wider than the saw cut of 3 mm → a blade or wire that cuts narrower than 2.5 mm',
    ],
    [
      'of a foam that is not there',
      block('R1-04', 300, 80, { foam: 'fill 80' }),
      'Block R1-04: no sheet of fill 80 is listed → list one of at least 310 mm × 90 mm',
    ],
    [
      'without a size',
      block('R1-05', NaN, 80),
      'Block R1-05: its length or height is not a number above 0 → give both',
    ],
    [
      'tapered to nothing',
      block('R1-06', 300, 80, { taper: { top: 50, bottom: 30 } }),
      'Block R1-06: its taper leaves nothing at the tail → make the taper smaller or the block higher',
    ],
  ])('a block %s', (_, bad, text) => {
    const plan = cutSheets([bad, good], [sheet], saw);
    expect(plan.faults.map((fault) => sayFinding(cutFinding(fault, 'mm')))).toEqual([text]);
    expect(plan.leftOut).toEqual([bad.id]);
    expect(plan.sheets.flatMap(({ blanks }) => blanks.map(({ parts }) => parts[0]!.id))).toEqual(['R1-01']);
  });

  test('no sheet listed at all', () => {
    const plan = cutSheets([good], [], saw);
    expect(plan.sheets).toEqual([]);
    expect(plan.faults.map((fault) => sayFinding(cutFinding(fault, 'mm')))).toEqual([
      'Block R1-01: no sheet of fill 50 is listed → list one of at least 310 mm × 90 mm',
    ]);
  });

  test('sheets that run out', () => {
    const parts = [block('a', 1100, 500), block('b', 1100, 400), block('c', 100, 50)];
    const plan = cutSheets(parts, [{ ...sheet, count: 1 }], saw);
    expect(plan.leftOut).toEqual(['b']);
    expect(plan.faults.map((fault) => sayFinding(cutFinding(fault, 'mm')))).toEqual([
      'Block b: the sheets of fill 50 are used up → add a sheet of at least 1110 mm × 410 mm',
    ]);
  });

  test('sheets and saws that make no sense', () => {
    const stock = [sheet, { ...sheet, id: 'narrow', width: 9 }, { ...sheet, id: 'half', count: 0.5 }];
    expect(cutSheets([good], stock, saw).faults.map((fault) => sayFinding(cutFinding(fault, 'mm')))).toEqual([
      'Sheet narrow: not used: trimming its edges leaves nothing → trim less or list a larger sheet',
      'Sheet half: not used: the number of sheets is not a whole number of 0 or more → count them again',
    ]);
    const plan = cutSheets([good], [sheet], { ...saw, kerf: -1 });
    expect(plan.leftOut).toEqual(['R1-01']);
    expect(plan.faults.map((fault) => sayFinding(cutFinding(fault, 'mm')))).toEqual([
      'Saw: the kerf is not a number of 0 or more; nothing is planned until it is → give one',
    ]);
  });

  test('nothing to cut is an empty plan', () => {
    expect(cutSheets([], [sheet], saw)).toMatchObject({ sheets: [], leftOut: [], faults: [] });
  });
});

describe('the search', () => {
  test('gives the same plan for the same job', () => {
    const plan = () => cutSheets(likeABoard(60), [sheet], saw, { rounds: 1500 });
    expect(plan()).toEqual(plan());
  });

  test('keeps the best so far when the time is up, complete all the same', () => {
    const parts = likeABoard(400);
    // So many rounds would outlast the test: that it ends says that it stopped.
    const plan = cutSheets(parts, [sheet], saw, { rounds: 1e9, seconds: 0.5 });
    expect(layoutFaults(plan, parts, saw)).toEqual([]);
  });

  test('tells its progress: ever more layouts looked at, never more sheets than it told before', () => {
    const told: CutProgress[] = [];
    cutSheets(likeABoard(60), [sheet], saw, { rounds: 4000, progress: (done) => told.push(done) });
    expect(told.length).toBeGreaterThan(0);
    expect(told.map(({ rounds }) => rounds)).toEqual(told.map(({ rounds }) => rounds).sort((a, b) => a - b));
    expect(told.map(({ sheets }) => sheets)).toEqual(told.map(({ sheets }) => sheets).sort((a, b) => b - a));
  });

  // How fast, the benchmarks say.
  test.each([100, 1000])('plans %d blocks and leaves none out', (count) => {
    expect(cutSheets(likeABoard(count), [sheet], saw, { rounds: 100 }).leftOut).toEqual([]);
  });
});
