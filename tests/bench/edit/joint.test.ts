import { layupOf } from '../../../src/layup/layupOf.js';
import { describe, expect, test } from 'vitest';
import { movableJoint, withJointMoved } from '../../../src/bench/edit/joint.js';
import { jobOf, sample } from '../read.js';

const INCH = 25.4;
const places = (text: string) => {
  const job = jobOf(text);
  return new Map(layupOf(job.glueUp, job.board.length).joints.map(({ id, at }) => [id, at]));
};

describe('a joint moved outward by half an inch', () => {
  const tarn = sample('tarn-rescue.yaml');
  const job = jobOf(tarn);
  const dotted = layupOf(job.glueUp, job.board.length).joints.filter(
    ({ side, kind }) => side === 'R' && kind === 'dotted',
  );

  test.each(dotted.map((joint) => [joint.id, joint] as const))(
    '%s goes half an inch outward with the stringers beside it, and no other joint moves',
    (id, at) => {
      const joint = movableJoint(job, at)!;
      const before = places(tarn);
      const after = places(withJointMoved(tarn, job, at, INCH / 2));
      expect(after.get(id)! - before.get(id)!).toBeCloseTo(INCH / 2, 6);
      const moved = [...after]
        .filter(([other, at]) => other.startsWith('JR') && Math.abs(at - before.get(other)!) > 1e-6)
        .map(([other]) => other);
      // Between the two strips lie only stringers, so as many joints move as there are members between them.
      const between = (joint.outer ?? job.glueUp.right.length - 1) - joint.inner;
      expect(moved).toHaveLength(between);
      // The left side is the mirror image.
      expect(after.get(id.replace('R', 'L'))! + after.get(id)!).toBeCloseTo(0, 6);
    },
  );

  test('stringers keep their thickness', () => {
    const thick = (text: string) =>
      jobOf(text)
        .glueUp.right.filter(({ kind }) => kind === 'stringer')
        .map(({ thickness }) => thickness);
    expect(thick(withJointMoved(tarn, job, dotted[0]!, INCH / 2))).toEqual(thick(tarn));
  });

  test('moves in whole sixteenths in an inch job', () => {
    const before = places(tarn).get(dotted[0]!.id)!;
    const after = places(withJointMoved(tarn, job, dotted[0]!, 5)).get(dotted[0]!.id)!;
    expect(after - before).toBeCloseTo((3 / 16) * INCH, 6);
  });

  test('a strip is never dragged away: 6 mm stay of it (common practice, no source)', () => {
    const far = jobOf(withJointMoved(tarn, job, dotted[0]!, 4000));
    for (const { thickness } of far.glueUp.right)
      if (typeof thickness === 'number') expect(thickness).toBeGreaterThanOrEqual(6);
  });
});

test('a joint of tapering strips moves as far at the nose as at the tail', () => {
  const text = sample('fell-short.yaml');
  const job = jobOf(text);
  const [before, after] = [text, withJointMoved(text, job, { side: 'R', number: 2 }, 4)].map((each) => {
    const { glueUp, board } = jobOf(each);
    return layupOf(glueUp, board.length).joints.find(({ id }) => id === 'JR2')!;
  });
  expect(after!.at - before!.at).toBeCloseTo(4, 9);
  expect(after!.slope).toBeCloseTo(before!.slope, 12);
});

test('the joint along the centreline and the one beside a centre stringer stay where they are', () => {
  expect(movableJoint(jobOf(sample('tarn-rescue.yaml')), { side: 'C', number: 0 })).toBeUndefined();
  expect(movableJoint(jobOf(sample('mere-prone.yaml')), { side: 'R', number: 1 })).toBeUndefined();
});
