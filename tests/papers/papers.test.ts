import { describe, expect, test } from 'vitest';
import { labelStocks } from '../../src/print/paper/labelStock.js';
import { choosePapers } from '../../src/papers/choose.js';
import { papersOf } from '../../src/papers/papers.js';
import { sheetRows } from '../../src/sheet/mirror.js';
import { planOfSample, SAMPLES } from '../sheet/sample.js';
import { filesOfPlan, setOf, wholeSetOf } from './wholeSet.js';

const options = { labelStock: labelStocks[0]! };

describe.each(SAMPLES)('the papers of %s', (name) => {
  const plan = planOfSample(name);
  const names = papersOf(plan, options).map((paper) => paper.name);

  test('come in the order of the work, each under its own name', () => {
    expect(new Set(names).size).toBe(names.length);
    const order = [
      'cover',
      'check',
      'contents',
      'map',
      'book',
      'cautions',
      'plan',
      'walls',
      'sections',
      'weights',
      'pole',
      'blocks',
      'labels',
      'tracking',
      'finish',
    ];
    expect(names.filter((each) => order.includes(each))).toEqual(order);
    for (const { row } of sheetRows(plan)) expect(names).toContain(`face-${row.id}`);
  });

  test('can be had one at a time', () => {
    const set = setOf(plan, { only: ['tracking', 'pole'] });
    expect(set.pages.map(({ kind, title }) => [kind, title])).toEqual([
      ['tiled', 'Story pole'],
      ['table', 'Tracking list'],
    ]);
  });

  test('of a name that does not exist are refused, not left out in silence', () => {
    const chosen = choosePapers(papersOf(plan, options), { only: ['tracking', 'face-Z9'], without: ['no'] });
    expect(chosen.unknown).toEqual(['face-Z9', 'no']);
  });

  test('a face sheet is asked for by either of the rows it serves', () => {
    for (const { row, mirror } of sheetRows(plan)) {
      if (!mirror) continue;
      const { toPrint, unknown } = choosePapers(papersOf(plan, options), { only: [`face-${mirror.id}`] });
      expect(unknown).toEqual([]);
      expect(toPrint.map((paper) => paper.name)).toEqual([`face-${row.id}`]);
    }
  });

  test('what is asked for and left out at once is refused', () => {
    expect(() => filesOfPlan(plan, { paper: 'A4', without: ['cards'] })).toThrow('--without: cards');
  });

  test('have no coordinate that is not a number and no word with an unfilled place', () => {
    const json = JSON.stringify(wholeSetOf(plan), (_, value: unknown) => {
      if (typeof value === 'number' && !Number.isFinite(value)) throw new Error('not a number');
      return value;
    });
    expect(json).not.toMatch(/\{[a-z]\w*\}/i);
    expect(json).not.toContain('undefined');
  });

  test('go to the printer, to a file that is looked at, or nowhere, and each to one of them', () => {
    const all = papersOf(plan, options);
    const named = (papers: readonly { readonly name: string }[]) => papers.map((paper) => paper.name);
    for (const asked of [
      {},
      { with: ['dots-full', 'walls'] },
      { without: ['face', 'map'] },
      { only: ['face', 'walls'] },
    ]) {
      const { toPrint, toLookAt, leftOut } = choosePapers(all, asked);
      expect([...named(toPrint), ...named(toLookAt), ...named(leftOut)].sort()).toEqual([...names].sort());
    }
    expect(named(choosePapers(all).toLookAt)).toEqual(['plan', 'walls', 'sections', 'weights']);
    expect(named(choosePapers(all).leftOut)).toContain('tape');
    expect(named(choosePapers(all, { with: ['tape', 'walls'] }).toPrint)).toEqual(
      expect.arrayContaining(['tape', 'walls', 'pole']),
    );
    const without = choosePapers(all, { without: ['face'] });
    expect(named(without.toPrint).filter((name) => name.startsWith('face'))).toEqual([]);
    expect(named(choosePapers(all, { only: ['face'] }).toPrint)).toEqual(
      names.filter((name) => name.startsWith('face')),
    );
  });

  test('are told of on the cover as they were chosen, whatever is printed anew', () => {
    const cover = (asked: object) => JSON.stringify(setOf(plan, { ...asked, only: ['cover'] }).pages);
    expect(cover({})).toMatch(/In look.pdf[^"]*plan, walls, sections, weights/);
    expect(cover({})).toMatch(/Made only when asked for[^"]*tape positions/);
    expect(cover({ without: ['face'] })).toMatch(/Made only when asked for[^"]*face sheets/);
  });
});
