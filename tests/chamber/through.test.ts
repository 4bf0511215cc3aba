import fc from 'fast-check';
import { expect, test } from 'vitest';
import { readJob } from '../../src/job/whole/read.js';
import { planOf } from '../../src/plan.js';
import { resultOf, type Result } from '../../src/view/result.js';
import { jobFiles } from '../random/jobFile.js';
import { evenly } from '../evenly.js';

const SEED = 20261126;
const BOARDS = 14;
/** Rounding, mm. */
const NEAR = 1e-6;

/**
 * Depth of what ends a row behind its face at `s`, worked out from the published joints alone; undefined where the rail
 * does.
 */
function farOf({ members, joints }: Result, row: Result['rows'][number]): ((s: number) => number) | undefined {
  const last = members.findIndex(({ id }) => id === row.members[row.members.length - 1]);
  const { origin, along, inward } = row.face;
  const joint = joints[inward[1] > 0 ? last : last - 1];
  if (!joint) return undefined;
  // The line from the face's point at s, square to the face, meets y = at + slope · x.
  return (s) => {
    const [x, y] = [origin[0] + s * along[0], origin[1] + s * along[1]];
    return (joint.at + joint.slope * x - y) / (inward[1] - joint.slope * inward[0]);
  };
}

const flared = jobFiles.chain((file) =>
  fc
    .array(fc.tuple(evenly(0.5, 1.2), evenly(0.5, 2.2)), {
      minLength: 3,
      maxLength: 3,
    })
    .map((tapers) => {
      const { members } = file['glueUp'] as { members: Record<string, unknown>[] };
      const { length } = file['board'] as { length: number };
      const strip = members[members.length - 1]!;
      const thick = (length * 0.08) / tapers.length;
      const inner = tapers.map(([nose, tail], i) => ({
        strip: strip['strip'],
        thickness: { nose: Math.round(thick * nose), tail: Math.round(thick * tail) },
        ...(i > 0 && { joint: 'dotted' }),
      }));
      return {
        ...file,
        glueUp: { centreJoint: 'dotted', members: [...inner, { strip: strip['strip'], joint: 'dotted' }] },
        dots: { size: 8, margin: 6, clearance: 4, spacing: 500 },
      };
    }),
);

test(`on ${BOARDS} flared glue-ups (seed ${SEED}) no chamber reaches into nose or tail at any depth, and each goes through its far face or leaves the floor`, () => {
  let [through, blind, leaning] = [0, 0, 0];
  fc.assert(
    fc.property(flared, (file) => {
      const { job } = readJob(JSON.stringify(file), 'flared', () => undefined);
      fc.pre(job !== undefined);
      const { solidNose, solidTail, floor } = job!.chambers;
      const result: Result = JSON.parse(JSON.stringify(resultOf(planOf(job!))));
      for (const row of result.rows) {
        const { origin, along, inward } = row.face;
        const far = farOf(result, row);
        for (const { id, profile, depth } of result.chambers.filter((each) => each.row === row.id)) {
          for (const t of depth) {
            const x = profile.map(([s]) => origin[0] + s * along[0] + t * inward[0]);
            expect(Math.min(...x), id).toBeGreaterThanOrEqual(solidNose - NEAR);
            expect(Math.max(...x), id).toBeLessThanOrEqual(result.board.length - solidTail + NEAR);
          }
          if (Math.abs(inward[0]) > 0.01) leaning++;
          if (!far) continue;
          const left = profile.map(([s]) => far(s) - depth[1]);
          const open = row.end === 'face' && Math.max(...left) <= NEAR;
          if (open) through++;
          else {
            expect(Math.min(...left), `${id} leaves`).toBeGreaterThanOrEqual(floor - NEAR);
            if (row.end !== 'face') continue;
            blind++;
            const said = result.notes.filter(({ where, why }) => where === id && why === 'blind');
            expect(said, id).toHaveLength(1);
          }
        }
      }
    }),
    { seed: SEED, numRuns: BOARDS, maxSkipsPerRun: 20 },
  );
  expect(through).toBeGreaterThan(30);
  expect(blind).toBeGreaterThan(0);
  expect(leaning).toBeGreaterThan(50);
}, 600_000);
