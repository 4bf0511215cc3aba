import { expect, test } from 'vitest';
import { seeded } from '../src/block/nest/seeded.js';
import type { Job } from '../src/job/job.js';
import { MATERIALS } from '../src/job/materials.js';
import { readJob } from '../src/job/read.js';
import { planOf, type Plan } from '../src/plan.js';
import { resultOf } from '../src/result.js';
import { hardJob, TABLE } from './random/hardJob.js';

/** How many boards, and from which seed; `OVER` and `SEED` set them. */
const BOARDS = Number(process.env['OVER'] ?? 6);
const SEED = Number(process.env['SEED'] ?? 1806);

const figures = (plan: Plan): string => JSON.stringify(resultOf(plan));

/** One change of every kind that a builder makes between two plans. */
const CHANGES: Readonly<Record<string, (job: Job, random: () => number) => Job>> = {
  walls: (job, random) => ({
    ...job,
    chambers: { ...job.chambers, web: job.chambers.web + 4 * random(), railWall: job.chambers.railWall + random() },
  }),
  grid: (job, random) => ({
    ...job,
    chambers: { ...job.chambers, pitch: job.chambers.pitch * (0.9 + 0.2 * random()), stagger: random() / 2 },
  }),
  profile: (job) => ({
    ...job,
    chambers: { ...job.chambers, shape: job.chambers.shape === 'follow' ? 'straight' : 'follow' },
  }),
  'glue-up': (job, random) => ({
    ...job,
    glueUp: {
      ...job.glueUp,
      right: job.glueUp.right.map((member) =>
        typeof member.thickness === 'number'
          ? { ...member, thickness: member.thickness * (0.95 + 0.1 * random()) }
          : member,
      ),
    },
  }),
  joints: (job) => ({
    ...job,
    glueUp: {
      ...job.glueUp,
      right: job.glueUp.right.map((member, i) =>
        i === 0 ? { ...member, joint: member.joint === 'dotted' ? 'bonded' : 'dotted' } : member,
      ),
    },
  }),
  dots: (job, random) => ({
    ...job,
    dots: { ...job.dots, spacing: job.dots.spacing * (0.8 + 0.4 * random()), margin: job.dots.margin * 0.9 },
  }),
  'keep-outs': (job, random) => ({
    ...job,
    keepOuts: [
      ...job.keepOuts,
      { kind: 'disc', name: 'plug', x: job.board.length * (0.3 + 0.4 * random()), y: 20, radius: 15 },
    ],
  }),
  routing: (job, random) => ({
    ...job,
    routing: { ...job.routing, cutterLength: job.routing.cutterLength * (0.8 + 0.4 * random()) },
  }),
  guides: (job) => ({ ...job, routing: { ...job.routing, guides: { kind: 'count', count: 3 } } }),
  measures: (job, random) => {
    const { length, profile } = job.board;
    const middle = profile[Math.floor(profile.length / 2)]!;
    const value = middle.thickness * (0.97 + 0.04 * random());
    return { ...job, shaped: [{ kind: 'thickness', x: Math.min(middle.x, length), y: 0, value, off: 'deck' }] };
  },
  materials: (job, random) => ({ ...job, fill: MATERIALS[Math.floor(random() * MATERIALS.length)]! }),
  board: (job, random) => ({
    ...job,
    board: {
      ...job.board,
      profile: job.board.profile.map((station) => ({
        ...station,
        thickness: station.thickness * (1 + 0.02 * random()),
      })),
    },
  }),
};

test(
  `on ${BOARDS} boards (seed ${SEED}) a plan made over any earlier one is, figure by figure, the one made afresh, whatever changed between them`,
  { timeout: 24 * 3_600_000 },
  () => {
    const kinds = Object.keys(CHANGES);
    const seen = new Set<string>();
    const found: string[] = [];
    for (let i = 0, boards = 0; boards < BOARDS; i++) {
      const random = seeded(SEED * 100_003 + i);
      const { file, table } = hardJob(random);
      const { job } = readJob(JSON.stringify(file), 'hard.json', (name) => (name === TABLE ? table : undefined));
      if (!job) continue;
      boards++;
      // A chain: each plan is made over the one before, as on the page; and the first again at its end.
      let before = planOf(job);
      const first = figures(before);
      let now = job;
      for (let step = 0; step < 4; step++) {
        const kind = kinds[(3 * boards + 5 * step) % kinds.length]!;
        seen.add(kind);
        now = CHANGES[kind]!(now, random);
        before = planOf(now, before);
        if (figures(before) !== figures(planOf(now))) found.push(`board ${i}, step ${step}: ${kind}`);
      }
      if (figures(planOf(job, before)) !== first) found.push(`board ${i}: back to the first`);
    }
    expect(found).toEqual([]);
    expect([...seen].sort()).toEqual([...kinds].sort());
  },
);
