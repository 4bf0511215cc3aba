import { expect, test } from 'vitest';
import { planOf } from '../../src/plan.js';
import { faultsOf } from '../../src/proof/faults.js';
import { routedChambers } from '../../src/proof/published.js';
import { flared } from '../weigh/flared.js';

// Found by `npm run adversary`: places straight from the nose were taken for places along a flared joint, which lie
// further on.
test('a hole on a flared joint is kept off where it is, told straight from the nose and not along the joint', () => {
  const plan = planOf(flared());
  const isFlared = (row: (typeof plan.layup.rows)[number]) => Math.abs(row.face.along[1]) > 0.02;
  // The chamber furthest from the nose on a flared face: there the two ways of telling are furthest apart.
  const [{ chamber, row, to }] = routedChambers(plan)
    .filter((one) => isFlared(one.row))
    .sort((a, b) => b.to - a.to) as [ReturnType<typeof routedChambers>[number]];
  const { face } = row;
  // By hand: a place `s` along a straight joint lies at s · cos(its angle to the centreline) from the nose.
  const straight = (s: number) => face.origin[0] + s * face.along[0];
  expect(to - straight(to)).toBeGreaterThan(0.4);
  const heights = chamber.profile.map(([, z]) => z);
  const [low, high] = [Math.min(...heights), Math.max(...heights)];
  const faults = (from: number) => {
    const box = [
      [straight(from), low],
      [straight(from + 30), low],
      [straight(from + 30), high],
      [straight(from), high],
    ] as const;
    const jointKeepOuts = [{ name: 'hole', joint: face.joint, points: box }];
    return faultsOf({ ...plan, job: { ...plan.job, jointKeepOuts } }).filter(({ where }) => where === chamber.id);
  };
  expect(faults(to + 0.05)).toEqual([]);
  expect(faults(to - 0.3)).toMatchObject([{ kind: 'keep-out', by: 'hole' }]);
});
