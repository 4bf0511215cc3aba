import fc from 'fast-check';
import { expect, test } from 'vitest';
import { parseLength } from '../../src/length/length.js';
import { printAtLeast, printAtMost } from '../../src/sheet/rounded.js';

test('a wall written down is never more than there is, and less by no more than a step of the rule', () => {
  const steps = { mm: 0.1, in: 25.4 / 16 };
  fc.assert(
    fc.property(
      fc.double({ min: 0, max: 4000, noNaN: true }),
      fc.constantFrom('mm' as const, 'in' as const),
      (mm, units) => {
        const read = parseLength(printAtMost(mm, units), units);
        expect(read).toMatchObject({ ok: true });
        const written = (read as { value: number }).value;
        // A hundredth of a millimetre is no wall.
        expect(written).toBeLessThanOrEqual(mm + 0.01);
        expect(written).toBeGreaterThan(mm - steps[units] - 1e-9);
      },
    ),
    { seed: 4, numRuns: 500 },
  );
});

test('11.9 mm is 7/16 in as a wall, though 1/2 in is nearer to 12.3', () => {
  expect(printAtMost(11.9, 'in')).toBe('7/16 in');
  expect(printAtMost(12.3, 'in')).toBe('7/16 in');
  expect(printAtMost(12.7, 'in')).toBe('1/2 in');
  expect(printAtMost(19.99, 'mm')).toBe('19.9 mm');
});

test('a half that is to meet another is never written shallower than it is', () => {
  expect(printAtLeast(51.3, 'in')).toBe('2 1/16 in');
  expect(printAtLeast(50.8, 'in')).toBe('2 in');
  expect(printAtLeast(51.31, 'mm')).toBe('51.4 mm');
});
