import fc from 'fast-check';
import { expect, test } from 'vitest';
import { seeded } from '../src/block/nest/seeded.js';
import type { Job } from '../src/job/job.js';
import { readJob } from '../src/job/whole/read.js';
import { planOf, type Plan } from '../src/plan.js';
import { resultOf } from '../src/view/result.js';
import { CHANGES, oneOf, type Random } from './random/change.js';
import { hardJob, TABLE } from './random/hardJob.js';
import { jobFiles } from './random/jobFile.js';
import { sampleJob } from './samples.js';

/** How many pairs of plans, and from which seed: `PAIRS=500 SEED=7 npx vitest run tests/over.test.ts`. */
const PAIRS = Number(process.env['PAIRS'] ?? 25);
const SEED = Number(process.env['SEED'] ?? 4100);
/** Changes of one job in turn, each planned over the plan before. */
const CHAIN = 3;

test(
  `over any earlier plan (${PAIRS} pairs, seed ${SEED}) a plan is the one made afresh, figure by figure`,
  { timeout: 24 * 3_600_000 },
  () => {
    const wrong: string[] = [];
    const kinds = Object.keys(CHANGES);
    let left = kinds;
    let other: Plan | undefined;
    for (let pair = 0, board = 0; pair < PAIRS; board++) {
      const random = seeded(SEED * 100_003 + board);
      const job = drawn(board, random);
      if (!job) continue;
      // Over the plan of another board altogether, then over its own.
      const done: string[] = ['another board'];
      let plan = over(job, other);
      for (let i = 0; i < CHAIN && pair < PAIRS; i++, pair++) {
        // Every kind of change has its turn.
        const kind = oneOf(random, ...left);
        left = left.length > 1 ? left.filter((each) => each !== kind) : kinds;
        done.push(kind);
        plan = over(CHANGES[kind]!(plan, random), plan);
      }
      other = plan;

      function over(now: Job, before: Plan | undefined): Plan {
        const made = planOf(now, before);
        const unlike = firstUnlike(resultOf(made), resultOf(planOf(now)));
        if (unlike !== undefined) wrong.push(`board ${board}, ${done.join(', ')}: ${unlike}`);
        return made;
      }
    }
    expect(wrong).toEqual([]);
  },
);

/** Three kinds of boards in turn: the samples, and two that are drawn at random; undefined where the reader refuses. */
function drawn(board: number, random: Random): Job | undefined {
  if (board % 3 === 0) return sampleJob(oneOf(random, 'tarn-rescue', 'mere-prone', 'fell-short'));
  const { file, table } =
    board % 3 === 1
      ? hardJob(random)
      : { file: fc.sample(jobFiles, { seed: SEED + board, numRuns: 1 })[0]!, table: undefined };
  return readJob(JSON.stringify(file), 'random.json', (name) => (name === TABLE ? table : undefined)).job;
}

/** Where two published plans differ first, and by what. */
function firstUnlike(a: unknown, b: unknown, path = ''): string | undefined {
  if (Object.is(a, b)) return undefined;
  if (typeof a !== 'object' || typeof b !== 'object' || !a || !b) return `${path}: ${String(a)}, not ${String(b)}`;
  for (const key of new Set([...Object.keys(a), ...Object.keys(b)])) {
    const unlike = firstUnlike(a[key as keyof typeof a], b[key as keyof typeof b], `${path}/${key}`);
    if (unlike !== undefined) return unlike;
  }
  return undefined;
}

test('dots on the left keep their own margins once a joint on the right is glued and the sides are no longer alike', () => {
  const job = sampleJob('tarn-rescue');
  const before = planOf(job);
  const dots = before.glue.dots
    .filter(({ joint }) => joint === 'JR1')
    .map(({ x, z, diameter }) => ({ x, height: { z }, diameter }));
  const now: Job = { ...job, dots: { ...job.dots, glued: [{ joint: 'JR1', dots, smears: [] }] } };
  const left = ({ glue }: Plan) => glue.dots.filter(({ joint }) => joint.startsWith('JL'));
  expect(left(planOf(now, before)).length).toBeGreaterThan(5);
  expect(left(planOf(now, before))).toEqual(left(planOf(now)));
});

test('what nothing has changed under is not made again, also of a job that was read anew', () => {
  const plan = planOf(sampleJob('mere-prone'));
  const job = sampleJob('mere-prone');
  const lighter = planOf({ ...job, fill: { ...job.fill, density: job.fill.density - 1 } }, plan);
  for (const part of ['board', 'trees', 'layup', 'bare', 'chambers', 'glue', 'routing'] as const)
    expect(lighter[part], part).toBe(plan[part]);
  expect(lighter.weights).not.toEqual(plan.weights);
  const wider = planOf({ ...job, chambers: { ...job.chambers, web: job.chambers.web + 2 } }, lighter);
  expect(wider.board).toBe(plan.board);
  expect(wider.bare).toBe(plan.bare);
  expect(wider.chambers).not.toEqual(plan.chambers);
});
