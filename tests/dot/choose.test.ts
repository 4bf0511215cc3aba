import fc from 'fast-check';
import { expect, test } from 'vitest';
import { choose, type Candidate, type Spacing } from '../../src/dot/choose.js';

const SEED = 20260712;

type Toll = [excess: number, lost: number, count: number, unevenness: number];

/** Excess, loss, count and sum of squared gaps of a choice, as the rules say. */
function tollOf(chosen: readonly Candidate[], { from, to, most, nearEnd }: Spacing): Toll {
  let excess = Math.max(0, chosen[0]!.s - from - nearEnd) + Math.max(0, to - chosen.at(-1)!.s - nearEnd);
  chosen.slice(1).forEach(({ s }, i) => (excess += Math.max(0, s - chosen[i]!.s - most)));
  const marks = [from, ...chosen.map(({ s }) => s), to];
  const uneven = marks.slice(1).reduce((sum, s, i) => sum + (s - marks[i]!) ** 2, 0);
  return [excess, chosen.reduce((sum, { lost }) => sum + lost, 0), chosen.length, uneven];
}

// Brute force over every subset of the candidates.
test(`no other choice of dots costs less (seed ${SEED})`, () => {
  fc.assert(
    fc.property(
      fc.uniqueArray(fc.integer({ min: 0, max: 60 }), { minLength: 1, maxLength: 11 }),
      fc.infiniteStream(fc.integer({ min: 0, max: 4 })),
      // Where nothing is lost anywhere, how even they lie decides.
      fc.boolean(),
      fc.integer({ min: 6, max: 30 }),
      (places, losses, isFree, most) => {
        const candidates = places
          .sort((a, b) => a - b)
          .map((s): Candidate => ({ s, lost: isFree ? 0 : (losses.next().value as number) }));
        const spacing = { from: 0, to: 60, most, least: 3, nearEnd: 8 };
        let best: Toll | undefined;
        for (let set = 1; set < 1 << candidates.length; set++) {
          const chosen = candidates.filter((_, i) => (set >> i) & 1);
          if (chosen.slice(1).some(({ s }, i) => s - chosen[i]!.s < spacing.least)) continue;
          const toll = tollOf(chosen, spacing);
          const less = best === undefined || toll.map((t, i) => Math.sign(t - best![i]!)).find((d) => d !== 0) === -1;
          if (less) best = toll;
        }
        expect(tollOf(choose(candidates, spacing), spacing)).toEqual(best);
      },
    ),
    { seed: SEED, numRuns: 400 },
  );
});

test('no candidate, no dot', () => {
  expect(choose([], { from: 0, to: 10, most: 5, least: 1, nearEnd: 1 })).toEqual([]);
});
