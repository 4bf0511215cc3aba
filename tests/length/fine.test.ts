import { expect, test } from 'vitest';
import { CALIPER_STEP, printFine } from '../../src/length/fine.js';

test.each([
  [14.499, '14.50 mm', '0.571 in'],
  [25.4, '25.40 mm', '1.000 in'],
  [0.3, '0.30 mm', '0.012 in'],
])('%f mm is set as %s or %s: hundredths, and thousandths of an inch of 25.4 mm', (mm, metric, inch) => {
  expect(printFine(mm, 'mm')).toBe(metric);
  expect(printFine(mm, 'in')).toBe(inch);
  // A caliper's step: what is written is never off by more than half of one.
  expect(Math.abs(parseFloat(metric) - mm)).toBeLessThanOrEqual(CALIPER_STEP.mm / 2 + 1e-9);
  expect(Math.abs(parseFloat(inch) * 25.4 - mm)).toBeLessThanOrEqual(CALIPER_STEP.in / 2 + 1e-9);
});
