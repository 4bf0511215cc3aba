import { describe, expect, it } from 'vitest';
import { progressOf } from '../../src/shop/progress.js';
import { NOTHING_YET, stateAfter } from '../../src/shop/state.js';
import { event, numbered, rescueBlocks, step } from './rescueBoard.js';

describe('progress', () => {
  it('counts five steps a block; a block that is glued has all five behind it', () => {
    const blocks = rescueBlocks();
    const state = stateAfter(
      NOTHING_YET,
      numbered([event({ seq: 1, what: step('R2-07', 'glued') }), event({ seq: 2, what: step('R2-08', 'cut') })]),
    );
    expect(blocks).toHaveLength(105);
    expect(progressOf(blocks, state)).toEqual({
      blocks: 105,
      glued: 1,
      stepsDone: 7,
      steps: 525,
      left: { marked: 103, cut: 103, sanded: 104, 'dry-fitted': 104, glued: 104 },
    });
  });
});
