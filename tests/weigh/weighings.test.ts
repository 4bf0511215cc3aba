import { expect, test } from 'vitest';
import type { WeighingSpec } from '../../src/job/spec/finish.js';
import type { Stage } from '../../src/job/spec/stage.js';
import { priorOf } from '../../src/weigh/estimate.js';
import { learnFrom } from '../../src/weigh/weighings.js';

// A board of 18 kg, give or take 1, of which 40 % is routed away; blocks bring back 1 kg, give or take 0.2.
const prior = priorOf([
  { value: 18, spread: 1 },
  { value: 1, spread: 0.2 },
]);
const partsAt = (stage: Stage) =>
  stage === 'blank' ? [1.2, 0] : stage === 'shaped' ? [1, 0] : stage === 'chambered' ? [0.6, 0] : [0.6, 1];
const weighed = (stage: Stage, weight: number): WeighingSpec => ({ stage, weight, scale: 0.1 });

test('weighings that fit are all learned from', () => {
  const { estimate, questioned } = learnFrom(prior, [weighed('shaped', 19), weighed('chambered', 11.4)], partsAt);
  expect(questioned).toEqual([]);
  expect(estimate.values[0]).toBeCloseTo(19, 1);
});

test('a board heavier after routing is questioned, and nothing is learned from it', () => {
  const shaped = weighed('shaped', 18);
  const { estimate, questioned } = learnFrom(prior, [weighed('chambered', 18.5), shaped], partsAt);
  expect(questioned).toHaveLength(1);
  expect(questioned[0]).toMatchObject({ stage: 'chambered', why: 'heavier', against: shaped });
  expect(questioned[0]!.expected[0]).toBeLessThan(10.8);
  expect(questioned[0]!.expected[1]).toBeGreaterThan(10.8);
  expect(estimate.values[0]).toBeCloseTo(18, 6);
});

test('a board lighter after the blocks went in is questioned', () => {
  const { questioned } = learnFrom(prior, [weighed('chambered', 10.8), weighed('filled', 10)], partsAt);
  expect(questioned.map(({ stage, why }) => [stage, why])).toEqual([['filled', 'lighter']]);
});

test('a weight that no density gives is questioned', () => {
  const { questioned } = learnFrom(prior, [weighed('shaped', 40)], partsAt);
  expect(questioned.map(({ why }) => why)).toEqual(['unlikely']);
});

test('a scale may show the same board a little heavier', () => {
  const { questioned } = learnFrom(prior, [weighed('shaped', 18), weighed('shaped', 18.1)], partsAt);
  expect(questioned).toEqual([]);
});

test('one slip does not spoil the weighings after it', () => {
  const slip = weighed('shaped', 81);
  const { estimate, questioned } = learnFrom(prior, [slip, weighed('chambered', 10.2)], partsAt);
  expect(questioned).toHaveLength(1);
  expect(estimate.values[0]).toBeCloseTo(17, 0);
});
