import { describe, expect, test } from 'vitest';
import { parseLength, printLength } from '../../src/length/length.js';
import { planOf } from '../../src/plan.js';
import { faceLineAt } from '../../src/view/faceLine.js';
import { dottedJoints, heightsOn } from '../../src/sheet/dots/dotsSheet.js';
import { sampleJob, SAMPLES } from '../samples.js';

/**
 * A figure goes on paper to the next mark of a rule, mm: half of it is lost along and up, and as much again by the mesh
 * the papers are drawn from.
 */
const LOST = { mm: 0.3, in: 25.4 / 16 } as const;

describe.each(SAMPLES)('the dots of %s, written into the job as the papers print them,', (name) => {
  const job = sampleJob(name);
  const plan = planOf(job);
  const read = (said: string) => {
    const length = parseLength(said, job.units);
    if (!length.ok) throw new Error(said);
    return length.value;
  };

  test.each(['overBottom', 'underDeck'] as const)('with their heights %s, are the same dots', (way) => {
    const glued = dottedJoints(plan).map((at) => {
      const finished = faceLineAt(plan.board, at.face);
      const dots = plan.glue.dots.filter(({ joint }) => joint === at.joint.id);
      return {
        joint: at.joint.id,
        smears: [],
        dots: dots.map(({ x, s, z, diameter }) => {
          const { over, under } = heightsOn(finished, s, z);
          const height = read(printLength(way === 'overBottom' ? over : under, job.units));
          return {
            x: read(printLength(x, job.units)),
            diameter,
            height: way === 'overBottom' ? { overBottom: height } : { underDeck: height },
          };
        }),
      };
    });
    expect(glued.flatMap(({ dots }) => dots).length).toBeGreaterThan(5);
    const again = planOf({ ...job, dots: { ...job.dots, glued } });
    for (const dot of plan.glue.dots) {
      const now = again.glue.dots.find(({ id }) => id === dot.id);
      expect([dot.id, now && Math.abs(now.z - dot.z) <= LOST[job.units]]).toEqual([dot.id, true]);
      expect([dot.id, Math.abs(now!.x - dot.x) <= LOST[job.units]]).toEqual([dot.id, true]);
    }
  });
});
