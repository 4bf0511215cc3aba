import fc from 'fast-check';
import { expect, test } from 'vitest';
import { printExactly } from '../../src/length/exactly.js';
import { parseLength } from '../../src/length/length.js';

test('a mark of the rule is a fraction of an inch, anything else millimetres', () => {
  expect(printExactly(12.7, 'in')).toBe('1/2 in');
  expect(printExactly(10.3, 'in')).toBe('10.3 mm');
  expect(printExactly(17.78, 'in')).toBe('17.78 mm');
  expect(printExactly(10.3, 'mm')).toBe('10.3 mm');
});

test('what is written is read back as it was', () => {
  const tenth = fc.integer({ min: 0, max: 20000 }).map((thousandths) => thousandths / 100);
  fc.assert(
    fc.property(tenth, fc.constantFrom('mm' as const, 'in' as const), (mm, units) => {
      const back = parseLength(printExactly(mm, units), units);
      expect(back.ok && Math.abs(back.value - mm)).toBeLessThan(1e-6);
    }),
  );
});
