import fc from 'fast-check';
import { expect, test } from 'vitest';
import { parseLength } from '../../src/length/length.js';
import { printAs, roundedAs } from '../../src/length/rounded.js';

const STEPS = { mm: 0.1, in: 25.4 / 16 };
const KINDS = {
  depth: 'down',
  half: 'up',
  opening: 'down',
  corner: 'up',
  noseEnd: 'up',
  tailEnd: 'down',
  skin: 'up',
  block: 'down',
  there: 'down',
  needed: 'up',
  takenOff: 'down',
  over: 'down',
  stays: 'up',
  pass: 'down',
} as const;
const THIN = ['over', 'stays', 'pass'];

test.each(Object.entries(KINDS))('%s is written on its safe side, off by less than a step of the rule', (kind, way) => {
  fc.assert(
    fc.property(
      fc.double({ min: 0, max: 4000, noNaN: true }),
      fc.constantFrom('mm' as const, 'in' as const),
      (mm, units) => {
        const read = parseLength(printAs(kind as keyof typeof KINDS, mm, units), units);
        expect(read).toMatchObject({ ok: true });
        const { value } = read as { value: number };
        const over = way === 'down' ? mm - value : value - mm;
        expect(over).toBeGreaterThan(-2e-6);
        expect(over).toBeLessThan(units === 'in' && THIN.includes(kind) ? 25.4 / 64 : STEPS[units]);
        expect(roundedAs(kind as keyof typeof KINDS, mm, units)).toBeCloseTo(value, 4);
      },
    ),
    { seed: 4, numRuns: 300 },
  );
});

test('26.38 mm deep is 1 in, though 1 1/16 in is nearer', () => {
  expect(printAs('depth', 26.38, 'in')).toBe('1 in');
  expect(roundedAs('depth', 26.38, 'in')).toBe(25.4);
  expect(printAs('there', 12.7, 'in')).toBe('1/2 in');
  expect(printAs('there', 19.99, 'mm')).toBe('19.9 mm');
});

test('a half that is to meet another is never written shallower than it is', () => {
  expect(printAs('half', 51.3, 'in')).toBe('2 1/16 in');
  expect(printAs('half', 50.8, 'in')).toBe('2 in');
  expect(printAs('half', 51.31, 'mm')).toBe('51.4 mm');
});

test('1.1 mm of foam is 1/32 in, not none', () => {
  expect(printAs('over', 1.13, 'in')).toBe('1/32 in');
  expect(printAs('over', 1.13, 'mm')).toBe('1.1 mm');
  expect(printAs('stays', 2, 'in')).toBe('3/32 in');
});

test('what is on a step but for the arithmetic of a machine stays on it', () => {
  expect(printAs('depth', 0.1 + 0.2, 'mm')).toBe('0.3 mm');
  expect(printAs('depth', 3 * 25.4 - 1e-9, 'in')).toBe('3 in');
  expect(printAs('needed', 18 + 1e-9, 'mm')).toBe('18 mm');
});
