import { describe, expect, test } from 'vitest';
import type { Job } from '../../src/job/job.js';
import { labelStocks } from '../../src/print/paper/labelStock.js';
import { planOf } from '../../src/plan.js';
import { reportOf } from '../../src/cli/report.js';
import { papersOf } from '../../src/papers/papers.js';
import { sampleJob } from '../samples.js';
import { printed } from '../print/printed.js';
import { fullSizeOf, setOf, wholeSetOf } from '../papers/wholeSet.js';

const options = { labelStock: labelStocks[0]! };
const fell = sampleJob('fell-short');
const withChambers = (job: Job, chambers: Partial<Job['chambers']>): Job => ({
  ...job,
  chambers: { ...job.chambers, ...chambers },
});
const { length } = fell.board;
const onlyPlace = (job: Job): Job => {
  const solidNose = length / 2 - job.chambers.pitch / 2;
  return withChambers(job, { solidNose, solidTail: solidNose, stagger: 0, datum: length / 2 });
};
const bonded = (job: Job): Job => ({
  ...job,
  glueUp: { ...job.glueUp, right: job.glueUp.right.map((member) => ({ ...member, joint: 'bonded' as const })) },
  dots: { ...job.dots, glued: [] },
});

/** Plans that leave papers with little or nothing to say. */
const FEW: [string, Job, (chambers: number) => boolean][] = [
  ['walls thicker than the board holds', withChambers(fell, { railWall: 200 }), (count) => count === 0],
  ['no joint that is opened', bonded(fell), (count) => count === 0],
  ['one place a row', onlyPlace(fell), (count) => count > 0 && count <= 6],
  ['a row too shallow to be routed', withChambers(fell, { railWall: 60 }), (count) => count > 0],
];

describe.each(FEW)('a board with %s', (_, job, isMeant) => {
  const plan = planOf(job);

  test('is one', () => expect(plan.chambers.length).toSatisfy(isMeant));

  test('has papers, each with something on it', async () => {
    const set = wholeSetOf(plan);
    for (const page of set.pages) {
      if (page.kind === 'table') expect([page.title, page.rows.length]).not.toEqual([page.title, 0]);
      if (page.kind === 'labels') expect(page.labels.length).toBeGreaterThan(0);
      if (page.kind === 'tiled') expect(page.drawings.length).toBeGreaterThan(0);
    }
    const { pages } = await printed(set.pages);
    expect(pages).toBeGreaterThan(4);
    for (const { shapes } of fullSizeOf(plan))
      JSON.stringify(shapes, (key, value: unknown) => {
        if (typeof value === 'number' && !Number.isFinite(value)) throw new Error(`${key} is not a number`);
        return value;
      });
    expect(reportOf(plan).join('\n')).not.toMatch(/NaN|Infinity|undefined/);
  });

  test('names no paper that would be empty', () => {
    for (const { name, kind } of papersOf(plan, options)) {
      const set = setOf(plan, { only: [name] });
      expect([kind, set.pages.length]).not.toEqual([kind, 0]);
    }
  });
});
