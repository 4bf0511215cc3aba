import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Units } from '../../src/length/units.js';
import { readJob } from '../../src/job/whole/read.js';
import { planOf, type Plan } from '../../src/plan.js';
import { jobFiles } from '../random/jobFile.js';
import { planOfSample, SAMPLES } from './sample.js';
import { saidBy, wrongNumbers } from './saidNumbers.js';

const UNITS = ['mm', 'in'] as const;
/** The same plan as another shop would print it. */
const printedIn = (plan: Plan, units: Units): Plan => ({ ...plan, job: { ...plan.job, units } });

describe.each(SAMPLES)('the papers, lists and report of %s', (name) => {
  test.each(UNITS)('in %s say of no chamber more than was proved, and each figure in one way', (units) => {
    const plan = printedIn(planOfSample(name), units);
    const all = saidBy(plan);
    expect(wrongNumbers(plan, all)).toEqual([]);
    // A check that finds nothing to read proves nothing.
    const facts = [
      ...(['depth', 'whole', 'length', 'height', 'sawnLength', 'sawnHeight', 'thick', 'noseEnd'] as const),
      ...(['tailEnd', 'deck', 'bottom'] as const),
    ];
    for (const fact of facts)
      for (const { id } of plan.chambers)
        expect(
          all.filter((each) => each.chamber === id && each.fact === fact).length,
          `${id} ${fact}`,
        ).toBeGreaterThanOrEqual(fact === 'depth' ? 5 : 1);
  });
});

test('on boards drawn at random, printed in either unit, no figure is beyond what was proved', () => {
  let chambers = 0;
  fc.assert(
    fc.property(jobFiles, fc.constantFrom(...UNITS), (file, units) => {
      const { job } = readJob(JSON.stringify(file), 'random.json', () => undefined);
      fc.pre(job !== undefined);
      const plan = printedIn(planOf(job!), units);
      fc.pre(plan.chambers.length > 0);
      chambers += plan.chambers.length;
      expect(wrongNumbers(plan)).toEqual([]);
    }),
    { numRuns: 12, seed: 20261126, maxSkipsPerRun: 20, endOnFailure: true },
  );
  expect(chambers).toBeGreaterThan(60);
});
