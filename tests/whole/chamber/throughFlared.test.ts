import { expect, test } from 'vitest';
import { planOf } from '../../../src/plan.js';
import { faultsOf } from '../../../src/proof/faults.js';
import { flared } from '../../weigh/flared.js';

// Found by `npm run adversary`: a place was held deep enough by the thick end of its piece, and its chamber then lay
// toward the thin one.
test('no chamber that goes through a flared piece is less deep than the smallest asked for, whatever that is', () => {
  const job = flared();
  let chambers = 0;
  for (let depth = 20; depth <= 120; depth += 2.5) {
    const { smallest } = job.chambers;
    const plan = planOf({ ...job, chambers: { ...job.chambers, smallest: { ...smallest, depth } } });
    expect(
      faultsOf(plan).filter(({ kind }) => kind === 'small'),
      `${depth} mm`,
    ).toEqual([]);
    for (const {
      depth: [from, to],
    } of plan.chambers)
      expect(to - from).toBeGreaterThanOrEqual(depth);
    chambers += plan.chambers.length;
  }
  expect(chambers).toBeGreaterThan(100);
});
