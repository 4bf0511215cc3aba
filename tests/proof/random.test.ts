import fc from 'fast-check';
import { expect, test } from 'vitest';
import { readJob } from '../../src/job/whole/read.js';
import { planOf, type Plan } from '../../src/plan.js';
import { faultsOf } from '../../src/proof/faults.js';
import { resultOf } from '../../src/view/result.js';
import { farthestFromMesh } from '../oracle/chord.js';
import { kernel } from '../oracle/kernel.js';
import { jobFiles } from '../random/jobFile.js';
import { disagreements } from './against.js';

/** How many boards, and from which seed; `npm run soak -- COUNT SEED` sets them. */
const BOARDS = Number(process.env['BOARDS'] ?? 100);
const SEED = Number(process.env['SEED'] ?? 20261125);
/** Boards of the hard kind are larger than this only in the soak. */
const MOST_CHAMBERS = 30;
/** Points of the smooth surface whose distance from the mesh is measured on each board. */
const POINTS = 600;

const figures = (plan: Plan): string => JSON.stringify(resultOf(plan));

test(
  `on ${BOARDS} boards drawn at random (seed ${SEED}) every wall agrees with an independent kernel, none is too thin, and no other rule is broken`,
  { timeout: 24 * 3_600_000 },
  async () => {
    const k = await kernel();
    let boards = 0;
    let chambers = 0;
    let farthest = 0;
    fc.assert(
      fc.property(jobFiles, (file) => {
        const { job } = readJob(JSON.stringify(file), 'random.json', () => undefined);
        // What asks for the impossible is the reader's to say.
        fc.pre(job !== undefined);
        const plan = planOf(job!);
        const few = {
          ...plan,
          chambers: plan.chambers.filter((_, i) => i % Math.ceil(plan.chambers.length / MOST_CHAMBERS) === 0),
        };
        boards++;
        chambers += few.chambers.length;
        expect(disagreements(few, k)).toEqual([]);
        expect(faultsOf(plan)).toEqual([]);
        const chord = farthestFromMesh(plan.board, POINTS);
        farthest = Math.max(farthest, chord);
        expect(chord).toBeLessThanOrEqual(plan.board.mesh.chordError);
        // What is taken over from a plan before changes nothing but the time.
        const { web, deckSkin } = job!.chambers;
        const changed = { ...job!, chambers: { ...job!.chambers, web: web + 3, deckSkin: deckSkin + 0.5 } };
        expect(figures(planOf(changed, plan))).toBe(figures(planOf(changed)));
      }),
      { numRuns: BOARDS, seed: SEED, maxSkipsPerRun: 20 },
    );
    process.stdout.write(
      `${boards} boards, ${chambers} chambers, seed ${SEED}; the surface lies up to ${farthest.toFixed(3)} mm from its mesh\n`,
    );
    expect(chambers).toBeGreaterThan(5 * BOARDS);
  },
);
