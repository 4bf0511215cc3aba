import { expect, it } from 'vitest';
import { exact, factorsFrom, printerFindings, printerStamp } from '../../../src/print/paper/printer.js';

it('takes its factors from two measured bars: measured over true', () => {
  const { across, along } = factorsFrom({ across: 168.3, along: 251 }, { across: 170, along: 250 });
  expect(across).toBeCloseTo(0.99, 12);
  expect(along).toBeCloseTo(1.004, 12);
});

it('accepts up to 3 % and names the side that is beyond', () => {
  expect(printerFindings({ across: 0.97, along: 1.03 })).toEqual([]);
  expect(printerFindings({ across: 1, along: 1.031 }).map(({ where }) => where)).toEqual(['printer.along']);
  expect(printerFindings({ across: NaN, along: 0 }).map(({ where }) => where)).toEqual([
    'printer.across',
    'printer.along',
  ]);
});

it('stamps only what is compensated', () => {
  expect(printerStamp(exact)).toBeUndefined();
  expect(printerStamp({ across: 0.992, along: 1 })).toBe('across 0.9920, along 1.0000');
});
