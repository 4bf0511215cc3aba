import { expect, test } from 'vitest';
import { seeded } from '../../src/block/nest/seeded.js';
import type { Job } from '../../src/job/job.js';
import { readJob } from '../../src/job/whole/read.js';
import { toBoard } from '../../src/layup/frame.js';
import { planOf, type Plan } from '../../src/plan.js';
import { proofOf } from '../../src/proof/proof.js';
import { resultOf } from '../../src/view/result.js';
import { verdictOf } from '../../src/verdict/verdict.js';
import { kernel } from '../oracle/kernel.js';
import { hardJob, TABLE } from '../random/hardJob.js';
import { disagreements } from './against.js';
import { contradictions } from './said.js';

/** How many boards, and from which seed; `npm run adversary -- COUNT SEED` sets them. */
const BOARDS = Number(process.env['HARD'] ?? 10);
const SEED = Number(process.env['SEED'] ?? 16500);
const MOST_CHAMBERS = 25;

test(
  `on ${BOARDS} hard boards drawn another way (seed ${SEED}) no plan that stands is unsound, as drawn, measured and glued`,
  async () => {
    const k = await kernel();
    const found: string[] = [];
    const counts = { drawn: 0, refused: 0, boards: 0, chambers: 0, stand: 0, measured: 0, landed: 0 };
    for (let i = 0; counts.boards < BOARDS; i++) {
      const random = seeded(SEED * 100_003 + i);
      const { file, table } = hardJob(random);
      counts.drawn++;
      const { job, findings } = readJob(JSON.stringify(file), 'hard.json', (name) =>
        name === TABLE ? table : undefined,
      );
      if (!job) {
        counts.refused++;
        // Nothing is refused without a place and a cure.
        for (const { where, what, remedy } of findings)
          expect([where.path, what, remedy].every((said) => said.length > 0)).toBe(true);
        continue;
      }
      counts.boards++;
      const which = `board ${i} of seed ${SEED}`;
      const plan = planOf(job);
      check(plan, which);
      const measured = asMeasured(job, random);
      check(planOf(measured, plan), `${which}, measured`);
      counts.measured++;
      const landed = asLanded(job, plan, random);
      if (landed) {
        check(planOf(landed, plan), `${which}, with dots as they landed`);
        counts.landed++;
      }
      // A plan over another is the one made afresh.
      const over = planOf(job, planOf(measured));
      if (JSON.stringify(resultOf(over)) !== JSON.stringify(resultOf(plan)))
        found.push(`${which}: another plan over an earlier one`);
    }
    process.stdout.write(`${JSON.stringify(counts)}, seed ${SEED}\n`);
    expect(found).toEqual([]);
    expect(counts.chambers).toBeGreaterThan(2 * BOARDS);

    function check(plan: Plan, which: string): void {
      const proof = proofOf(plan);
      // A dot that is there already may lie too near to the surface: the plan says so and does not stand.
      const isGlued = plan.drawn !== undefined || plan.job.dots.glued.length > 0;
      const faults = proof.faults.filter(({ kind }) => kind !== 'margin' || !isGlued);
      for (const one of [...proof.thin, ...faults]) found.push(`${which}: ${JSON.stringify(one)}`);
      const every = Math.ceil(plan.chambers.length / MOST_CHAMBERS) || 1;
      const some = { ...plan, chambers: plan.chambers.filter((_, c) => c % every === 0) };
      for (const one of [...disagreements(some, k), ...contradictions(plan)]) found.push(`${which}: ${one}`);
      counts.chambers += some.chambers.length;
      if (verdictOf(plan, proof).stands) counts.stand++;
    }
  },
  24 * 3_600_000,
);

/** A few readings of a caliper, some millimetres off the drawing. */
function asMeasured(job: Job, random: () => number): Job {
  const { length, profile } = job.board;
  const shaped = Array.from({ length: 1 + Math.floor(random() * 4) }, (_, i) => {
    const x = length * (0.2 + 0.6 * random());
    const after = Math.max(
      1,
      profile.findIndex((station) => station.x >= x),
    );
    const [a, b] = [profile[after - 1]!, profile[after]!];
    const drawn = a.thickness + ((x - a.x) / (b.x - a.x)) * (b.thickness - a.thickness);
    const off = (['deck', 'bottom', 'both'] as const)[i % 3]!;
    return { kind: 'thickness', x, y: 0, value: drawn * (0.96 + 0.08 * random()), off } as const;
  });
  return { ...job, shaped };
}

/** The dots of a joint, up to a centimetre from where they were planned. */
function asLanded(job: Job, plan: Plan, random: () => number): Job | undefined {
  const face = plan.layup.rows
    .map((row) => row.face)
    .find(({ joint }) => plan.glue.dots.some((dot) => dot.joint === joint));
  if (!face) return undefined;
  const { joint } = face;
  const dots = plan.glue.dots
    .filter((dot) => dot.joint === joint)
    .map(({ s, z, diameter }) => ({
      x: toBoard(face, s, 0, 0)[0] + 20 * (random() - 0.5),
      height: { z: z + 6 * (random() - 0.5) },
      diameter,
    }));
  return { ...job, dots: { ...job.dots, glued: [{ joint, dots, smears: [] }] } };
}
