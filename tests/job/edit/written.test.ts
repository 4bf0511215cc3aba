import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { withUnit, writtenLength } from '../../../src/job/edit/written.js';
import { parseLength } from '../../../src/length/length.js';

describe('a length written into the job', () => {
  test('is a fraction where an inch rule has a mark for it, else millimetres', () => {
    // 25.4 mm to the inch, exact (international yard and pound agreement, 1959).
    expect(writtenLength(19.05, 'in', '1 in')).toBe('3/4 in');
    expect(writtenLength(38.1, 'in', undefined)).toBe('1 1/2 in');
    expect(writtenLength(38, 'in', '1 1/2 in')).toBe('38 mm');
  });

  test('is a bare number in a metric job, unless its unit was written out', () => {
    expect(writtenLength(74, 'mm', 72)).toBe('74');
    expect(writtenLength(74.5, 'mm', '72 mm')).toBe('74.5 mm');
  });

  test('reads back as the same length to a thousandth of a millimetre', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.5, max: 4000, noNaN: true }),
        fc.constantFrom('mm' as const, 'in' as const),
        (mm, units) => {
          const read = parseLength(writtenLength(mm, units, undefined), units);
          expect(read.ok && Math.abs(read.value - mm) <= 0.0006).toBe(true);
        },
      ),
    );
  });
});

test('a bare number typed while the other units are on show gets those units', () => {
  expect(withUnit('19', 'mm', 'in')).toBe('19 mm');
  expect(withUnit('1 1/2', 'in', 'mm')).toBe('1 1/2 in');
  expect(withUnit('3/4"', 'mm', 'in')).toBe('3/4"');
  expect(withUnit('12', 'in', 'in')).toBe('12');
  expect(withUnit('thick', 'mm', 'in')).toBe('thick');
});
