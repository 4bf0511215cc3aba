import fc from 'fast-check';
import { expect, test } from 'vitest';
import { slotsOf } from '../../src/chamber/slots.js';
import type { Row } from '../../src/layup/layup.js';
import { sampleJob } from '../samples.js';

const SEED = 20261127;
const { chambers } = sampleJob('mere-prone');

// Brute force: every whole k that could be meant; the contract's own formula, by hand.
test(`places of a row are all marks of the grid on the board, counted from the nose (seed ${SEED})`, () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 40, max: 900 }),
      fc.integer({ min: -700, max: 2500 }),
      fc.constantFrom(0, 0.25, 0.5, 1),
      fc.constantFrom(0 as const, 1 as const),
      fc.integer({ min: 300, max: 6000 }),
      (pitch, datum, stagger, parity, length) => {
        const spec = { ...chambers, pitch, datum, stagger, web: pitch / 4 };
        const slots = slotsOf({ parity } as Row, spec, length);
        const centres: number[] = [];
        for (let k = -200; k <= 200; k++) {
          const centre = datum + (k + stagger * parity) * pitch;
          if (centre > 0 && centre < length) centres.push(centre);
        }
        expect(slots.map(({ place }) => place)).toEqual(centres.map((_, i) => i + 1));
        slots.forEach(({ centre, from, to }, i) => {
          expect(centre).toBeCloseTo(centres[i]!, 6);
          expect(centre - from).toBeCloseTo((pitch * 3) / 8, 6);
          expect(to - centre).toBeCloseTo((pitch * 3) / 8, 6);
        });
      },
    ),
    { seed: SEED, numRuns: 300 },
  );
});

test('a mark on the very nose or tail is no place', () => {
  const spec = { ...chambers, pitch: 100, datum: 0, stagger: 0 };
  expect(slotsOf({ parity: 0 } as Row, spec, 400).map(({ centre }) => centre)).toEqual([100, 200, 300]);
});
