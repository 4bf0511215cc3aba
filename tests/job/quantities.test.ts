import fc from 'fast-check';
import { expect, test } from 'vitest';
import { quantities } from '../../src/job/quantities.js';

test('the bounds that a refused length is told, typed in their place, are taken', () => {
  let refused = 0;
  fc.assert(
    fc.property(
      fc.constantFrom('mm' as const, 'in' as const),
      // Hundredths of a millimetre: the program's own bounds are no finer.
      fc.integer({ min: 5, max: 90_000 }),
      fc.integer({ min: 200, max: 500_000 }),
      (units, from, more) => {
        const [least, most] = [from / 100, (from + more) / 100];
        const length = quantities(units).length('a length', { least, most, because: 'it is so' });
        const { error } = length.safeParse(units === 'mm' ? `${most + 50} mm` : `${most / 25.4 + 2} in`);
        const remedy = (error!.issues[0] as unknown as { params: { remedy: string } }).params.remedy;
        const [, low, high] = /between (.+) and (.+): it is so$/.exec(remedy)!;
        for (const bound of [low!, high!]) {
          const { success, data } = length.safeParse(bound);
          expect([bound, success]).toEqual([bound, true]);
          expect(data).toBeGreaterThanOrEqual(least - 1e-6);
          expect(data).toBeLessThanOrEqual(most + 1e-6);
        }
        refused++;
      },
    ),
    { seed: 1526, numRuns: 300 },
  );
  expect(refused).toBe(300);
});
