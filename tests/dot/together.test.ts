import { describe, expect, test } from 'vitest';
import type { Toll } from '../../src/dot/choose.js';
import type { Round } from '../../src/dot/standing.js';
import { chooseTogether, type JointOffers } from '../../src/dot/together.js';
import { gluingFrom, leastToll, tollOf, type Gluing } from './gluings.js';
import { numbersFrom } from './numbers.js';

const SEED = 20261128;

const chosen = ({ joints, standing, rules }: Gluing) => chooseTogether(joints, standing, rules);
const main = ({ excess, across, cost }: Omit<Toll, 'dots' | 'unevenness'>) => ({
  excess: Math.round(1000 * excess) / 1000,
  across: Math.round(across),
  cost: Math.round(cost),
});

/** Every choice of dots on a joint that lie no nearer than they may. */
function allOn({ offers, spacing: { least } }: JointOffers): Round[][] {
  let all: Round[][] = [[]];
  for (const dot of offers)
    all = all.flatMap((taken) =>
      taken.length > 0 && dot.s - taken[taken.length - 1]!.s < least ? [taken] : [taken, [...taken, dot]],
    );
  return all;
}

describe(`dots of all joints chosen together (seed ${SEED})`, () => {
  test('cost what the best of all choices costs, tried one by one on few places', () => {
    const next = numbersFrom(SEED);
    for (let i = 0; i < 12; i++) {
      const gluing = gluingFrom(next, 6, 2);
      let best: Toll | undefined;
      const [one, other = []] = gluing.joints.map(allOn);
      for (const a of one!)
        for (const b of gluing.joints.length > 1 ? other : [[]]) {
          const toll = tollOf(gluing, [a, b].slice(0, gluing.joints.length));
          const order = (['excess', 'across', 'cost'] as const)
            .map((name) => (best ? toll[name] - best[name] : -1))
            .find((off) => Math.abs(off) > 1e-6);
          if (order !== undefined && order < 0) best = toll;
        }
      expect(main(tollOf(gluing, chosen(gluing))), `glue-up ${i}`).toEqual(main(best!));
    }
  }, 120_000);

  test('cost what an integer programme finds, on fifty glue-ups', async () => {
    const next = numbersFrom(SEED + 1);
    for (let i = 0; i < 50; i++) {
      const gluing = gluingFrom(next, 14);
      expect(main(tollOf(gluing, chosen(gluing))), `glue-up ${i}`).toEqual(main(await leastToll(gluing)));
    }
  }, 300_000);
});

test('dots that hold the blank already stay, and others go where these have split a chamber', () => {
  const next = numbersFrom(SEED + 2);
  for (let i = 0; i < 20; i++) {
    const gluing = gluingFrom(next, 12, 2);
    if (gluing.joints.length < 2) continue;
    const [first, second] = gluing.joints;
    const made = { ...first!, offers: [first!.offers[3]!, first!.offers[8]!], isMade: true };
    const taken = chosen({ ...gluing, joints: [made, second!] });
    expect(taken[0]).toEqual(made.offers);
    // Brute force over the other joint, with these where they are.
    const least = Math.min(...allOn(second!).map((dots) => whole(tollOf(gluing, [made.offers, dots]))));
    expect(whole(tollOf(gluing, taken))).toBeLessThan(least + 1);
  }
});

/** A toll as one number: the first differences weigh most. */
const whole = ({ excess, across, cost }: Toll) => excess * 1e12 + across * 1e9 + cost;

test('the same joints give the same dots, whatever was chosen before', () => {
  const gluing = gluingFrom(numbersFrom(SEED + 3), 20);
  const first = chosen(gluing);
  chosen(gluingFrom(numbersFrom(SEED + 4), 20));
  expect(chosen(gluing)).toEqual(first);
});
