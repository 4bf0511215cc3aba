import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readJob } from '../../src/job/whole/read.js';
import { planOf, type Plan } from '../../src/plan.js';
import { growths } from '../oracle/growth.js';
import { jobFiles } from '../random/jobFile.js';
import { sampleJob, SAMPLES } from '../samples.js';
import { evenly } from '../evenly.js';

const SEED = 20261126;
const BOARDS = 5;
/** Of each board. */
const MOST_CHAMBERS = 10;
/** By what share of its volume a chamber may still grow by any one edge. */
const LEFT = 0.01;

const few = ({ chambers }: Plan) => chambers.filter((_, i) => i % Math.ceil(chambers.length / MOST_CHAMBERS) === 0);
const leftOver = (plan: Plan) => growths(plan, few(plan)).filter(({ share }) => share > LEFT);

describe('no edge of a chamber can be moved so that it holds a hundredth more and keeps its walls', () => {
  test.each(SAMPLES)('on the sample %s', (name) => {
    expect(leftOver(planOf(sampleJob(name)))).toEqual([]);
  });

  test(`on ${BOARDS} boards drawn at random with rail walls up to five times the skin (seed ${SEED})`, () => {
    fc.assert(
      fc.property(jobFiles, evenly(1, 5), (file, thicker) => {
        const chambers = file['chambers'] as { deckSkin: number };
        const railWall = Math.round(chambers.deckSkin * thicker);
        const text = JSON.stringify({ ...file, chambers: { ...chambers, railWall } });
        const { job } = readJob(text, 'thick rail', () => undefined);
        fc.pre(job !== undefined);
        expect(leftOver(planOf(job!))).toEqual([]);
      }),
      { seed: SEED, numRuns: BOARDS, maxSkipsPerRun: 20, endOnFailure: true },
    );
  }, 600_000);
});
