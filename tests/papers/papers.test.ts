import { describe, expect, test } from 'vitest';
import { labelStocks } from '../../src/print/paper/labelStock.js';
import { paperSet, papersOf } from '../../src/papers/papers.js';
import { sheetRows } from '../../src/sheet/mirror.js';
import { planOfSample, SAMPLES } from '../sheet/sample.js';

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
    const { set, unknown } = paperSet(plan, options, ['tracking', 'pole']);
    expect(unknown).toEqual([]);
    expect(set.pages.map(({ kind, title }) => [kind, title])).toEqual([
      ['tiled', 'Story pole'],
      ['table', 'Story pole: tape positions'],
      ['table', 'Tracking list'],
    ]);
  });

  test('of a name that does not exist are refused, not left out in silence', () => {
    const { set, unknown } = paperSet(plan, options, ['tracking', 'face-Z9']);
    expect(unknown).toEqual(['face-Z9']);
    expect(set.pages).toEqual([]);
  });

  test('have no coordinate that is not a number and no word with an unfilled place', () => {
    const json = JSON.stringify(paperSet(plan, options).set, (_, value: unknown) => {
      if (typeof value === 'number' && !Number.isFinite(value)) throw new Error('not a number');
      return value;
    });
    expect(json).not.toMatch(/\{[a-z]\w*\}/i);
    expect(json).not.toContain('undefined');
  });
});
