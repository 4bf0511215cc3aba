import { describe, expect, test } from 'vitest';
import { cuttingOf } from '../../src/block/cutting.js';
import { planOf } from '../../src/plan.js';
import { sampleJob } from '../samples.js';
import { layoutFaults } from './layoutFaults.js';

describe.each(['tarn-rescue', 'mere-prone'] as const)('%s', (name) => {
  const plan = planOf(sampleJob(name));
  const cutting = cuttingOf(plan);
  const { kerf, trim, keep } = plan.job.blocks;

  test('every block is sawn as the list of cuts says, and none is missing', () => {
    expect(layoutFaults(cutting.sheets!, cutting.parts, { kerf, trim, keep })).toEqual([]);
    expect(cutting.sheets!.leftOut).toEqual([]);
  });
});
