import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { knownJob } from '../../scripts/known-jobs.mjs';
import { cutSheets } from '../../src/block/cut/cutSheets.js';
import type { CutPart, CutStock, SawSetting } from '../../src/block/nest/cutPart.js';
import { seeded } from '../../src/block/nest/seeded.js';
import { evenly } from '../evenly.js';
import { layoutFaults } from './layoutFaults.js';

// Known optima by how the jobs are made: so many sheets are cut at random in three stages, so that so many suffice, and
// by their area fewer do not. `scripts/bench-known.mjs` goes through 120 of them.
describe('blocks that were cut from so many full sheets come from as many again', () => {
  test.each([
    ['few', true],
    ['free', false],
  ] as const)('in %s lengths', (_, few) => {
    for (let seed = 1; seed <= 6; seed++) {
      const { parts, sheet, saw, sheets } = knownJob(seeded(9000 + seed), few, 3);
      const plan = cutSheets(parts, [sheet], saw, { rounds: 2000 });
      expect(layoutFaults(plan, parts, saw)).toEqual([]);
      expect(plan.sheets, `seed ${seed}`).toHaveLength(sheets);
      expect(plan.foams).toEqual([{ foam: 'fill', sheets, fewest: sheets, isLeast: true }]);
    }
  });
});

const saw: SawSetting = { kerf: 3.175, trim: 6.35, keep: { length: 300, width: 100 } };

function someBlocks(draw: () => number, count: number): CutPart[] {
  return Array.from({ length: count }, (_, i) => ({
    id: `B${i}`,
    foam: 'fill',
    length: Math.round(100 + 200 * draw()),
    height: Math.round(40 + 60 * draw()),
    mayTurn: draw() < 0.5,
  }));
}

function sheetsOf(parts: readonly CutPart[], stock: readonly CutStock[]): number {
  const plan = cutSheets(parts, stock, saw, { rounds: 100 });
  expect(plan.leftOut).toEqual([]);
  return plan.sheets.length;
}

// A wider sheet holds what a narrower one holds, and who has more sheets need not take them.
describe('more foam is never worse', () => {
  test.each([1, 2, 3])('a wider sheet never takes more sheets, job %d', (seed) => {
    const parts = someBlocks(seeded(seed), 36);
    let before = Infinity;
    // From what three sheets need at the least to what two need.
    for (let width = 330; width <= 560; width += 10) {
      const now = sheetsOf(parts, [{ id: 's', foam: 'fill', length: 900, width }]);
      expect(now, `${width} mm wide`).toBeLessThanOrEqual(before);
      before = now;
    }
  });

  test('nor does one more sheet of a size, or one more size', () => {
    const parts = someBlocks(seeded(4), 30);
    const sheet = { id: 's', foam: 'fill', length: 900, width: 500 };
    const small = { id: 't', foam: 'fill', length: 620, width: 300 };
    const area = (stock: readonly CutStock[]) => cutSheets(parts, stock, saw, { rounds: 100 }).sums.sheetArea;
    const lists = [
      [{ ...sheet, count: 2 }],
      [{ ...sheet, count: 3 }],
      [sheet],
      [sheet, { ...small, count: 1 }],
      [sheet, { ...small, count: 2 }],
      [sheet, small],
    ];
    const areas = lists.map(area);
    expect(areas).toEqual([...areas].sort((a, b) => b - a));
  });

  test('a size that differs by what a computer’s sums leave is the same size', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1000 }), evenly(-1e-9, 1e-9), (seed, nudge) => {
        const parts = someBlocks(seeded(seed), 12);
        const at = (by: number) =>
          cutSheets(
            parts.map((part) => ({ ...part, length: part.length + by, height: part.height - by })),
            [{ id: 's', foam: 'fill', length: 25.4 * 24 + by, width: 25.4 * 10 - by }],
            saw,
            { rounds: 30 },
          );
        expect(at(nudge)).toEqual(at(0));
      }),
      { numRuns: 20, seed: 5 },
    );
  });
});
