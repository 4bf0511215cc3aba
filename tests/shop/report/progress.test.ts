import { describe, expect, it } from 'vitest';
import { progressOf } from '../../../src/shop/report/progress.js';
import { NOTHING_YET, stateAfter } from '../../../src/shop/log/state.js';
import { event, numbered, rescueBlocks, step } from '../rescueBoard.js';

describe('progress', () => {
  it('counts five steps a block; a block that is glued has all five behind it', () => {
    const blocks = rescueBlocks();
    const state = stateAfter(
      NOTHING_YET,
      numbered([event({ seq: 1, what: step('R2-07', 'glued') }), event({ seq: 2, what: step('R2-08', 'cut') })]),
    );
    expect(blocks).toHaveLength(105);
    expect(progressOf(blocks, state, new Map())).toEqual({
      blocks: 105,
      glued: 1,
      stepsDone: 7,
      steps: 525,
      left: { marked: 103, cut: 103, sanded: 104, 'dry-fitted': 104, glued: 104 },
    });
  });

  it('counts only what fits: nothing of what must be made new, the cut of what must be trimmed', () => {
    const blocks = rescueBlocks();
    const log = ['R2-07', 'R2-08', 'R2-09'].map((id, i) => event({ seq: i + 1, what: step(id, 'sanded') }));
    const sizes = blocks[0]!.sizes;
    const { stepsDone } = progressOf(
      blocks,
      stateAfter(NOTHING_YET, numbered(log)),
      new Map([
        ['R2-07', { kind: 'new', to: sizes, short: sizes }],
        ['R2-08', { kind: 'trim', to: sizes, off: sizes }],
      ]),
    );
    expect(stepsDone).toBe(0 + 2 + 3);
  });
});
