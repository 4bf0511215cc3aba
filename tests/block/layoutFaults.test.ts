import { describe, expect, test } from 'vitest';
import { cutSheets } from '../../src/block/cut/cutSheets.js';
import type { CutPart, SawSetting } from '../../src/block/nest/cutPart.js';
import type { CutPlan, CutSheet } from '../../src/block/cut/cutPlan.js';
import { layoutFaults } from './layoutFaults.js';

const saw: SawSetting = { kerf: 3, trim: 5, keep: { length: 100, width: 50 } };
const parts: CutPart[] = [240, 220, 200, 180, 160].map((length, i) => ({
  id: `B${i}`,
  foam: 'fill',
  length,
  height: 50 + 5 * i,
  mayTurn: false,
  ...(i < 2 && { taper: { top: 10, bottom: 0 } }),
}));
const plan = cutSheets(parts, [{ id: 's', foam: 'fill', length: 600, width: 400 }], saw, { rounds: 500 });

/** The plan with its first sheet changed. */
function spoiled(change: (sheet: CutSheet) => CutSheet): CutPlan {
  return { ...plan, sheets: plan.sheets.map((sheet, i) => (i === 0 ? change(sheet) : sheet)) };
}

describe('the checker of layouts sees what is wrong', () => {
  test('nothing in a sound plan', () => expect(layoutFaults(plan, parts, saw)).toEqual([]));

  test.each<[string, CutPlan]>([
    [
      'a cut that is missing',
      spoiled((sheet) => ({ ...sheet, cuts: sheet.cuts.filter(({ number }) => number !== 6) })),
    ],
    ['cuts in another order', spoiled((sheet) => ({ ...sheet, cuts: [...sheet.cuts].reverse() }))],
    [
      'a blank moved by half a millimetre',
      spoiled((sheet) => ({
        ...sheet,
        blanks: sheet.blanks.map((blank, i) => (i === 0 ? { ...blank, x: blank.x + 0.5 } : blank)),
      })),
    ],
    ['a blank twice', spoiled((sheet) => ({ ...sheet, blanks: [...sheet.blanks, sheet.blanks[0]!] }))],
    ['a blank forgotten', spoiled((sheet) => ({ ...sheet, blanks: sheet.blanks.slice(1) }))],
    [
      'a fence set wrongly',
      spoiled((sheet) => ({
        ...sheet,
        cuts: sheet.cuts.map((cut) => (cut.number === 5 ? { ...cut, fence: cut.fence! + 1 } : cut)),
      })),
    ],
    [
      'a stage that is not so',
      spoiled((sheet) => ({
        ...sheet,
        cuts: sheet.cuts.map((cut) => (cut.number === 5 ? { ...cut, stage: 2 } : cut)),
      })),
    ],
  ])('%s', (_, bad) => expect(layoutFaults(bad, parts, saw)).not.toEqual([]));

  test('a wider saw than planned for', () => {
    expect(layoutFaults(plan, parts, { ...saw, kerf: 4 })).not.toEqual([]);
  });
});
