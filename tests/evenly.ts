import fc from 'fast-check';

/** Steps from one end of a range to the other. */
const STEPS = 2 ** 30;

/**
 * A number anywhere between two, all of them as likely. `fc.double` draws evenly from the doubles there are, of which
 * nearly all lie next to 0: of a range that holds 0 it hardly ever gives one that anybody could measure.
 */
export function evenly(least: number, most: number): fc.Arbitrary<number> {
  return fc.integer({ min: 0, max: STEPS }).map((step) => least + ((most - least) * step) / STEPS);
}
