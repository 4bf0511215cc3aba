import { expect, test } from 'vitest';
import { printLength } from '../../src/length/length.js';
import { wrapped } from '../../src/sheet/lettering.js';

test('however narrow the place, a measure is never parted: 3 1/8 in over two lines would be cut as 1/8 in', () => {
  for (const units of ['mm', 'in'] as const)
    for (const feet of [undefined, 'feet'] as const)
      for (let mm = 1; mm < 900; mm += 7.3) {
        const measure = printLength(mm, units, feet);
        // Feet and inches may part where each keeps its unit, but a fraction never leaves its inches.
        const lines = wrapped(`right through, ${measure}`, 1, 5);
        expect(lines.slice(2).join(' ')).toBe(measure);
        for (const line of lines.slice(2)) expect(line).toMatch(/^\d[\d /.]* ?(?:mm|in|ft)/);
      }
});
